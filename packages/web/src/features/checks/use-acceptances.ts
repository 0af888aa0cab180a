/** What the rules find, each with what people accepted of it. */
import { type Grounded, groundsOf, matchAcceptances, type Which } from "@loomwright/engine";
import { useMemo } from "react";
import { useCar } from "../../app/car.js";
import { useFindings } from "../../engine/hooks.js";
import { useJobState } from "../../server/hooks.js";
import type { FindingAcceptance } from "../../server/types.js";

const NONE: readonly FindingAcceptance[] = [];

export function useAcceptances(which: Which) {
	const { car } = useCar();
	const findings = useFindings(which).data;
	const acceptances = useJobState().data?.acceptedFindings ?? NONE;
	return useMemo(() => {
		const loom = car[which];
		const now = (findings ?? []).map(
			(finding): Grounded => ({ of: which, finding, grounds: groundsOf(loom, finding) }),
		);
		const { byFinding, gone } = matchAcceptances(
			now,
			acceptances.filter(({ of }) => of === which),
		);
		const found = now.map((grounded, k) => {
			const all = byFinding[k] ?? [];
			return { grounded, all, accepted: all.some(({ changed }) => changed.length === 0) };
		});
		return { found, gone: findings ? gone : [] };
	}, [car, which, findings, acceptances]);
}

export type FoundAndAccepted = ReturnType<typeof useAcceptances>["found"][number];
