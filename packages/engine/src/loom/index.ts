/** The data of a loom, its tables and its queries. */
export type { LoomTables, Place, RowKind } from "./loom-tables.js";
export type { At, NewParts, RecipeStep, RecipeTable } from "./recipe-row.js";
export type * from "./types.js";
