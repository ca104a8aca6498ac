// How much of a file is drawn.

/**
 * No drawing shows more things of a kind. Nobody finds anything among more, and a page that shows them stands still: what is beyond
 * is told in the table and in the list of parts, and the drawing says that it is not drawn.
 */
export const mostDrawn = 100;
