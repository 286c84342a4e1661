/** Western and Greek letters, punctuation, arrows and signs of arithmetic, and what pictures are drawn with. */
export const ONE_COLUMN_EACH =
  /^[\x20-\x7e\xa1-\xac\xae-\u024f\u0391-\u03a1\u03a3-\u03c9\u2010-\u2027\u2030-\u205e\u2070-\u208e\u2190-\u2199\u2200-\u22ff\u2500-\u259f\u25cb\u25cf\u25c4\u25ba\u2610]*$/;
