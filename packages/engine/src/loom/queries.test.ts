import { expect, test } from "vitest";
import {
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
import { readSoundTables } from "./read-tables.js";

// A unit in a housing X1 with rows A and B, and an in-line connector X2 of three cavities.
const LOOM = readSoundTables({
	"parts.csv": "part,kind\nU1,control unit\nX1,connector\nX2,connector\n",
	"contacts.csv":
		"contact,part,connector,cavity,role\n" +
		["A1", "A2", "A3", "B2", "B3", "12"].map((c) => `U1.${c},U1,X1,${c},unused\n`).join("") +
		["1", "2", "3"].map((c) => `X2.${c}a,X2,,${c},a\nX2.${c}b,X2,X2,${c},b\n`).join(""),
	"joints.csv": "joint,kind\nSP1,splice\n",
	"wires.csv":
		"wire,from,to,size,length,pair,bundle\n" +
		"W1,U1.A1,X2.1a,0.5,1,twist,left\n" +
		"W2,U1.A2,X2.2a,0.5,1,twist,left\n" +
		"W3,X2.1b,SP1,0.5,1,,right\n" +
		"W4,SP1,cut,0.5,1,,\n" +
		"W5,SP1,stowed,0.5,1,,\n",
}).delivered;

const ids = (items: readonly { readonly id: string }[]) => items.map(({ id }) => id).join(" ");
const contact = (id: string) => LOOM.contacts.get(id)!;

test("wires at a place, in a bundle, in a pair", () => {
	expect(ids(wiresAtContact(LOOM, "U1.A1"))).toBe("W1");
	expect(ids(wiresAtJoint(LOOM, "SP1"))).toBe("W3 W4 W5");
	expect(ids(wiresAtContact(LOOM, "SP1"))).toBe("");
	expect(ids(wiresInBundle(LOOM, "left"))).toBe("W1 W2");
	expect(ids(wiresInBundle(LOOM, ""))).toBe("");
	expect(ids(pairMates(LOOM, "W1"))).toBe("W2");
	expect(ids(pairMates(LOOM, "W4"))).toBe("");
	expect(ids(pairMates(LOOM, "none"))).toBe("");
});

test("contacts of a part and in a housing", () => {
	expect(ids(contactsOfPart(LOOM, "U1"))).toBe("U1.A1 U1.A2 U1.A3 U1.B2 U1.B3 U1.12");
	expect(ids(contactsInConnector(LOOM, "X1"))).toBe(ids(contactsOfPart(LOOM, "U1")));
	expect(ids(contactsInConnector(LOOM, "X2"))).toBe("X2.1a X2.1b X2.2a X2.2b X2.3a X2.3b");
	expect(housingOf(LOOM, contact("U1.A1"))).toBe("X1");
	expect(housingOf(LOOM, contact("X2.1a"))).toBe("X2");
	expect(otherHalf(LOOM, contact("X2.1a"))?.id).toBe("X2.1b");
	expect(otherHalf(LOOM, contact("X2.3b"))?.id).toBe("X2.3a");
	expect(otherHalf(LOOM, contact("U1.A1"))).toBeUndefined();
});

test("neighbours are one number or one letter away, on the same half", () => {
	expect(ids(cavityNeighbours(LOOM, contact("U1.A2")))).toBe("U1.A1 U1.A3 U1.B2");
	expect(ids(cavityNeighbours(LOOM, contact("U1.B3")))).toBe("U1.A3 U1.B2");
	expect(ids(cavityNeighbours(LOOM, contact("U1.12")))).toBe("");
	expect(ids(cavityNeighbours(LOOM, contact("X2.2a")))).toBe("X2.1a X2.3a");
});

test("names of ends", () => {
	const { from, to } = LOOM.wires.get("W4")!;
	expect([endName(from), endName(to), endName(LOOM.wires.get("W1")!.from)]).toEqual(["SP1", "", "U1.A1"]);
});
