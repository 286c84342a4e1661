/** What a sheet leads to, by the address from where it lies; undefined where nothing is to be led to. */
export interface Links {
  /** By its path from the engine's folder, as a document names it. */
  readonly photo: (path: string) => string | undefined;
  readonly part: (name: string, mark: string) => string | undefined;
  readonly engine: (folder: string) => string | undefined;
  readonly board: string | undefined;
}

export const NO_LINKS: Links = {
  photo: () => undefined,
  part: () => undefined,
  engine: () => undefined,
  board: undefined,
};

/** From one file to another, both by their paths from the same folder. What an address means more by is encoded. */
export function addressFrom(from: string, to: string): string {
  const [own, other] = [from.split('/').slice(0, -1), to.split('/')];
  let same = 0;
  while (same < Math.min(own.length, other.length - 1) && own[same] === other[same]) same++;
  return [...own.slice(same).map(() => '..'), ...other.slice(same).map(encoded)].join('/');
}

const encoded = (name: string): string =>
  encodeURIComponent(name.replace(/\p{Surrogate}/gu, '\uFFFD')).replace(
    /[!'()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`,
  );

/** Formats that are looked at and run nothing: a page or a drawing that is opened by itself may. */
const PHOTO = /\.(?:jpe?g|png|gif|webp|avif|heic|heif|tiff?|bmp)$/i;

/** A photograph of an engine's own folder from a sheet that lies in the shop, both by their paths from its root. */
export function photoAddress(path: string, folder: string, sheet: string): string | undefined {
  const names = path.split('/');
  const isPlain = names.every((each) => each !== '' && each !== '.' && each !== '..' && !each.includes('\\'));
  if (!isPlain || !PHOTO.test(path) || sheet.startsWith('../')) return undefined;
  return addressFrom(sheet, folder === '.' ? path : `${folder}/${path}`);
}
