/** Whether a person may write an entry, and by what right: what is stored beside it. */
import type { Car } from "@loomwright/engine";
import { type Ability, abilitiesOf } from "../../people/abilities.js";
import { holdOn, jobState, supervised } from "../../people/state.js";
import { stepSort } from "../../people/step-sort.js";
import type { Entry, Standing } from "../../store/entry/append.js";
import type { Written } from "../../store/entry/kinds.js";
import { abilitiesSet } from "../../store/people.js";
import type { Store } from "../../store/store.js";
import { Problem } from "../problem.js";
import type { Who } from "./who.js";

/** Entries that settle what others wrote. */
const SETTLING = ["hold", "lift", "correction"] as const;

type Writer = Exclude<Who, { role: "guest" | "nobody" }>;

interface Asked {
	readonly store: Store;
	readonly car: Car;
	readonly job: string;
	readonly who: Writer;
	/** Last place of the history the writer had seen; left out: all of it. */
	readonly seen: number | undefined;
}

/** @throws Problem 403 or 404 or 409 that says who may, or what comes first */
export async function standingOf(asked: Asked, entry: Written): Promise<Standing> {
	const { car, who } = asked;
	const { role } = who;
	switch (entry.kind) {
		case "step":
		case "sign-off": {
			const sort = stepSort(car, entry.body.step, entry.body.sort);
			const ability = await abilityOf(asked, sort);
			if (ability === "not yet")
				throw new Problem(
					403,
					`${"name" in who ? who.name : role} may not do steps of the sort ${sort} yet`,
					"Have it done by someone who may; the owner can open such steps to you, with a second person.",
				);
			if (entry.kind === "step") return { role, sort };
			await checkHold(asked, entry.body.step);
			return { role, sort, ability };
		}
		case "lift":
			notByApprentice(role, "lift a hold");
			await checkThere(asked, entry.body.hold, "hold");
			return { role };
		case "acceptance":
			if ("finding" in entry.body) checkAccepts(role, entry.body.finding.severity);
			else notByApprentice(role, "enter that the car was accepted");
			return { role };
		case "correction":
			checkTakesBack(who, await checkThere(asked, entry.body.of));
			return { role };
		default:
			return { role };
	}
}

async function abilityOf({ store, who }: Asked, sort: string): Promise<Ability> {
	if (who.role === "bench") return "alone";
	const set = await store.read((db) => abilitiesSet(db, who.account));
	const own = set.get(sort);
	if (own) return own;
	// Only an apprentice's practice counts for anything.
	const counts =
		who.role === "apprentice"
			? supervised(who.account, (await store.entriesOfKinds(["step", "sign-off", "correction"])).values())
			: new Map<string, number>();
	return abilitiesOf(who.role, set, counts).find((cell) => cell.sort === sort)?.ability ?? "not yet";
}

/** Whoever knew of a hold may not sign over it; whoever did not is shown the clash instead. */
async function checkHold({ store, job, seen }: Asked, step: string): Promise<void> {
	const settling = (await store.entriesOfKinds(SETTLING, job)).get(job) ?? [];
	const known = settling.filter(({ place }) => seen === undefined || place <= seen);
	const hold = holdOn(step, jobState(known).holds);
	if (!hold || holdOn(step, jobState(settling).holds)?.entry !== hold.entry) return;
	throw new Problem(
		409,
		`this is on hold: ${hold.text} (${hold.person})`,
		"Clear what it waits for; then a technician or the owner lifts the hold.",
	);
}

async function checkThere({ store, job }: Asked, id: string, kind?: Entry["kind"]): Promise<Entry> {
	const found = await store.entry(id);
	const here =
		found && (await store.entriesOfKinds([found.kind], job)).get(job)?.some((one) => one.id === id);
	if (found && here && (kind === undefined || found.kind === kind)) return found;
	throw new Problem(404, `this job has no ${kind ?? "entry"} '${id}'`, "Take the id from the job's history.");
}

function checkAccepts(role: Writer["role"], severity: "stop" | "warn" | "note"): void {
	notByApprentice(role, "accept what a rule found");
	if (severity === "stop" && role === "technician")
		throw new Problem(
			403,
			"what says stop only the owner accepts",
			"Mend it, or ask the owner to look at it and sign in.",
		);
}

/** An apprentice's own only; and what others took back comes not back by one who is not the owner. */
function checkTakesBack(who: Writer, target: Entry): void {
	if (target.kind === "tables")
		throw new Problem(
			422,
			"an entry does not take back tables that were replaced",
			"Replace the tables again, by those from before.",
		);
	if (who.role === "bench" || target.account === who.account) return;
	notByApprentice(who.role, "take back others' entries");
	if (target.kind === "correction" && who.role !== "owner")
		throw new Problem(
			403,
			"a correction is taken back by its own writer or the owner",
			"Write the entry anew instead.",
		);
}

function notByApprentice(role: Writer["role"], what: string): void {
	if (role === "apprentice")
		throw new Problem(403, `an apprentice may not ${what}`, "Ask a technician or the owner.");
}
