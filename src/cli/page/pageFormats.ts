export const PAGE_FORMATS = ['text', 'markdown', 'json'] as const;

export type PageFormat = (typeof PAGE_FORMATS)[number];
