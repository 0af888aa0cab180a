/** Conditions in words. */
import type { Which } from "@loomwright/engine";
import { useCar } from "../../app/car.js";

export function useWhenWords(which: Which): (condition: string) => string {
	const { conditions } = useCar().car[which];
	return (condition) => {
		if (condition === "") return "in no condition";
		return conditions.get(condition)?.title || condition;
	};
}
