/** Text tables: cells in and out, errors by file, row and column. */
export { formatTableError, type TableError, TableErrors } from "./errors.js";
