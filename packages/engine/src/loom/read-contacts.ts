import { parseSettings, type Row } from "../tables/index.js";
import { cavityFaults } from "./check-cavities.js";
import { type Context, claim, mustKnow, rowsOf } from "./context.js";
import { placeWords } from "./names.js";
import type { CONTACT_COLUMNS } from "./schemas.js";
import type { Contact } from "./types.js";

type ContactRow = Row<keyof typeof CONTACT_COLUMNS>;

/** Contacts by name out of `contacts.csv` or `new-contacts.csv`. Roles and values are checked in the devices room. */
export function readContacts(
	context: Context,
	table: "contacts" | "new-contacts",
): ReadonlyMap<string, Contact> {
	const contacts = new Map<string, Contact>();
	const rows = new Map<Contact, ContactRow>();
	for (const row of rowsOf(context, table, "contact")) {
		claim(context, row, "contact", "contact");
		checkPart(context, row, table === "new-contacts");
		checkName(row);
		checkConnector(context, row);
		const contact: Contact = {
			id: row.text("contact"),
			part: row.text("part"),
			connector: row.text("connector"),
			cavity: row.text("cavity"),
			role: row.text("role"),
			values: row.read("values", parseSettings) ?? {},
			label: row.text("label"),
			note: row.text("note"),
		};
		rows.set(contact, row);
	}
	// With contacts of faulty rows too: a half that is there, if faulty, is not missing.
	for (const { contact, problem, wanted } of cavityFaults(rows.keys(), context.partKinds)) {
		const row = rows.get(contact)!;
		if (!row.faulty) row.refuse("cavity", problem, wanted);
	}
	for (const [contact, row] of rows) if (!row.faulty) contacts.set(contact.id, contact);
	return contacts;
}

function checkPart(context: Context, row: ContactRow, isNew: boolean): void {
	mustKnow(context, row, "part", ["part"], isNew ? "a part of new-parts.csv" : "a part of parts.csv");
	const place = context.names.find("part", row.text("part"));
	const delivered = context.files.get("parts")?.file;
	if (isNew && place && place.file === delivered) {
		row.refuse(
			"part",
			`"${row.text("part")}" is in the car as delivered (${placeWords(place)})`,
			"a part of new-parts.csv",
		);
	}
}

function checkName(row: ContactRow): void {
	const id = row.text("contact");
	const part = row.text("part");
	if (id === "" || part === "") return;
	const rest = id.startsWith(`${part}.`) ? id.slice(part.length + 1) : "";
	if (rest === "") {
		const tail = id.slice(id.indexOf(".") + 1);
		row.refuse("contact", `"${id}" is not its part's name, a dot and a name`, `${part}.${tail || "1"}`);
	} else if (/[;,!=]/.test(rest)) {
		row.refuse("contact", `"${id}" has one of ; , ! = in it`, "a name without them");
	}
}

function checkConnector(context: Context, row: ContactRow): void {
	const part = row.text("part");
	const connector = row.text("connector");
	const inLine = context.partKinds.get(part) === "connector";
	mustKnow(context, row, "connector", ["part"], "the name of a part of kind connector, or empty");
	const kind = context.partKinds.get(connector);
	if (kind !== undefined && kind !== "connector") {
		row.refuse("connector", `"${connector}" is a ${kind}`, "a part of kind connector, or empty");
	}
	if (inLine && connector !== "" && connector !== part) {
		row.refuse(
			"connector",
			`a contact of the connector ${part} is not in another housing`,
			`${part}, or empty`,
		);
	}
	if ((inLine || connector !== "") && row.text("cavity") === "") {
		row.refuse("cavity", "the cell is empty", `the number of the cavity in ${inLine ? part : connector}`);
	}
}
