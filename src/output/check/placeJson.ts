import type { Place } from '../../diagnostic/place.ts';

export const placeJson = ({ path, line, column, endLine, endColumn }: Place) => ({
  path,
  line,
  column,
  end_line: endLine,
  end_column: endColumn,
});
