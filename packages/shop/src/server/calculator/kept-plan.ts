/** The proposal of a car, found once as long as the car is kept open: it takes seconds, and pages ask for it again. */
import type { Car } from "@loomwright/engine";
import { type PlanAnswer, planAnswer } from "../../answers/plan.js";

const plans = new WeakMap<Car, Promise<PlanAnswer>>();

/**
 * @param tables the car's own: another text of any of them is another car
 * @throws TableErrors as `planAnswer`
 */
export function keptPlan(car: Car, tables: Readonly<Record<string, string>>): Promise<PlanAnswer> {
	let plan = plans.get(car);
	if (plan === undefined) {
		plan = planAnswer(car, tables);
		plans.set(car, plan);
	}
	return plan;
}
