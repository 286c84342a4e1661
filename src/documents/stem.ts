/** A file's name without its folder and its ending: the name that people use for a document. */
export const stemOf = (path: string): string => path.replace(/^.*\//, '').replace(/\.ya?ml$/, '');
