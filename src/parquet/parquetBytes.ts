import { parquetWriteBuffer } from 'hyparquet-writer';

export interface ParquetColumn {
  readonly name: string;
  readonly type: 'text' | 'number';
  readonly values: readonly (string | number | null)[];
}

export type ParquetWriter = (columns: readonly ParquetColumn[]) => Uint8Array;

/** A Parquet file of text and of doubles, any of which may be missing; the same columns give the same bytes. */
export const parquetBytes: ParquetWriter = (columns) =>
  new Uint8Array(
    parquetWriteBuffer({
      columnData: columns.map(({ name, type, values }) => ({
        name,
        data: [...values],
        type: type === 'text' ? 'STRING' : 'DOUBLE',
        nullable: true,
      })),
      createdBy: 'tenths',
    }),
  );
