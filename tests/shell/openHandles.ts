import { type FileLayer, nodeFiles } from '../../src/shell/write/fileLayer.ts';

export interface CountedFiles {
  readonly files: FileLayer;
  /** How many handles were opened, and how many of them are open still. */
  readonly handles: () => { readonly opened: number; readonly open: number };
}

/** A file system that counts the handles that it gave out. */
export function countedFiles(base: FileLayer = nodeFiles): CountedFiles {
  let [opened, closed] = [0, 0];
  const counting =
    <Given extends unknown[]>(open: (...given: Given) => number) =>
    (...given: Given): number => {
      const handle = open(...given);
      opened += 1;
      return handle;
    };
  const files: FileLayer = {
    ...base,
    openToRead: counting(base.openToRead),
    openToAppend: counting(base.openToAppend),
    openFolder: counting(base.openFolder),
    createNew: counting(base.createNew),
    close: (handle) => {
      closed += 1;
      base.close(handle);
    },
  };
  return { files, handles: () => ({ opened, open: opened - closed }) };
}
