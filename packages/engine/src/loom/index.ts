/** The data of a loom, its tables and its queries. */
export { type CavityFault, cavityFaults } from "./check-cavities.js";
export type { LoomTables, Place, RowKind } from "./loom-tables.js";
export { parseName, placeWords } from "./names.js";
export {
	cavityNeighbours,
	contactsInConnector,
	contactsOfPart,
	endName,
	housingOf,
	otherHalf,
	pairMates,
	wiresAtContact,
	wiresAtJoint,
	wiresInBundle,
} from "./queries.js";
export { readSoundTables, readTables } from "./read-tables.js";
export { type At, EMPTY_CELLS, type NewParts, type RecipeStep, type RecipeTable } from "./recipe-row.js";
export { SCHEMAS, type TableName } from "./schemas.js";
export type * from "./types.js";
export { formatWireEnd, parseWireEnd } from "./wire-end.js";
export { DUTIES, MARKS } from "./words.js";
export { writeTables } from "./write-tables.js";
