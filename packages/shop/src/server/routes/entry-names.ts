import { type Car, type Loom, rules, settingsOf } from "@loomwright/engine";
import { BadInput } from "../../answers/errors.js";
import type { Written } from "../../store/entry/kinds.js";

/**
 * Sees that what an entry names is on this car, as delivered or as converted.
 * @throws BadInput for the first name that is not
 */
export function checkNames(car: Car, { kind, body }: Written): void {
	const looms = [car.delivered, car.converted];
	const need = (what: string, name: string, has: (loom: Loom) => boolean) => {
		if (!looms.some(has))
			throw new BadInput(`this car has no ${what} '${name}'`, `the name of a ${what} of this car`);
	};
	const needStep = (step: string) => {
		const number = /^recipe\/(.*)$/.exec(step)?.[1];
		if (number !== undefined && !car.tables.recipe.some((row) => row.step === number))
			throw new BadInput(
				`this car's recipe has no step '${number}'`,
				"recipe/ and the number of a step of recipe.csv",
			);
	};
	// What the rule found may be gone by now, and was accepted all the same.
	const needRule = (rule: string) => {
		if (!rules.some(({ id }) => id === rule))
			throw new BadInput(`there is no rule '${rule}'`, "a rule as the findings name it");
	};
	switch (kind) {
		case "reading":
			for (const name of [body.from, body.to]) {
				// `body` is the body metal itself.
				const contact = name.replace(/!pin$/, "");
				if (name !== "body")
					need("contact or joint", name, (loom) => loom.contacts.has(contact) || loom.joints.has(name));
			}
			need("condition", body.when, (loom) => isCondition(loom, body.when));
			return;
		case "function":
			need("function", body.function, (loom) => loom.functions.some((row) => row.function === body.function));
			return;
		case "bench":
			need("part", body.part, (loom) => loom.parts.has(body.part));
			return;
		case "reseated":
			need("part", body.what, (loom) => loom.parts.has(body.what));
			return;
		case "codes":
			for (const unit of body.units)
				need("control unit", unit, (loom) => loom.parts.get(unit)?.kind === "control unit");
			return;
		case "step":
		case "sign-off":
			needStep(body.step);
			return;
		case "photo":
		case "note":
		case "hold":
			if (body.step !== undefined) needStep(body.step);
			return;
		case "repair":
			for (const step of body.steps) needStep(`recipe/${step}`);
			return;
		case "acceptance":
			if ("finding" in body) needRule(body.finding.rule);
			return;
		case "lift":
		case "correction":
			return;
	}
}

/** Listed, or said in place with names and states of this car: `BAT=off; X1=unmated`. */
function isCondition(loom: Loom, when: string): boolean {
	try {
		settingsOf(loom, when);
		return true;
	} catch (error) {
		if (error instanceof RangeError) return false;
		throw error;
	}
}
