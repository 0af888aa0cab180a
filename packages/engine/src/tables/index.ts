/** Text tables: cells in and out, errors by file, row and column. */
export { formatSettings, parseList, parseSettings } from "./cells.js";
export { formatTableError, type TableError, TableErrors } from "./errors.js";
export { didYouMean, nearestName } from "./nearest.js";
export { type OpenTable, openTable, type Schema } from "./open-table.js";
export { readTable, type Table } from "./read-table.js";
export type { Row } from "./row.js";
export { type RowChange, rowChanges } from "./row-changes.js";
export { writeTable } from "./write-table.js";
