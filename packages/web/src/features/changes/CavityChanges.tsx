/** The differences at one connector: per cavity what was there and what is there now. */
import type { Change, Which } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { useState } from "react";
import { useCar } from "../../app/car.js";
import { Drawing } from "../../drawing/view/Drawing.js";
import { LoomChoice } from "../../shared/LoomChoice.js";
import type { Group } from "./groups.js";
import { WasIs } from "./WasIs.js";

export function CavityChanges({ group }: { group: Group }) {
	const [drawn, setDrawn] = useState<Change>();
	return (
		<article className="stack">
			<h2>
				<span className="mono">{group.id}</span> {group.label}
			</h2>
			{group.place && <p className="soft">{group.place}</p>}
			<ul className="cavities">
				{group.changes.map((change) => (
					<li key={change.kind + change.text} className="cavity">
						<div className="cavity-name">
							<span className="mono">{cavityName(change)}</span>
							<span className="soft">{change.kind}</span>
						</div>
						<WasIs change={change} />
						{pathOf(change).length > 0 && (
							<Button
								variant="default"
								aria-pressed={drawn === change}
								onClick={() => setDrawn(drawn === change ? undefined : change)}
							>
								{drawn === change ? "Close" : "Drawing"}
							</Button>
						)}
						{drawn === change && <ChangeDrawing change={change} />}
					</li>
				))}
			</ul>
		</article>
	);
}

const cavityName = ({ cavity, contact, part, joint, wire }: Change): string =>
	cavity || contact.split(".").at(-1) || joint || part || wire;

/** What to draw of a change: the contact, its wires and the splices they run through. */
function pathOf({ contact, joint, before, after }: Change): string[] {
	const wires = [before, after].flatMap((joined) => (joined ? [joined.wire.id] : []));
	const reaches = [before, after].flatMap((joined) => joined?.reaches ?? []);
	const beyond = reaches.flatMap(({ place, loose, splices }) => [...splices, ...(loose ? [] : [place])]);
	return [...new Set([contact, joint, ...wires, ...beyond])].filter(Boolean);
}

function ChangeDrawing({ change }: { change: Change }) {
	const { delivered, converted } = useCar().car;
	const path = pathOf(change);
	const has = (which: Which) => {
		const loom = which === "delivered" ? delivered : converted;
		return path.filter((name) => loom.wires.has(name) || loom.contacts.has(name) || loom.joints.has(name));
	};
	const [which, setWhich] = useState<Which>(change.after || !change.before ? "converted" : "delivered");
	return (
		<div className="cavity-drawing stack">
			<LoomChoice value={which} onChange={setWhich} />
			{has(which).length > 0 ? (
				<Drawing which={which} path={has(which)} />
			) : (
				<p className="soft">
					Nothing of this is in the loom {which === "delivered" ? "as delivered" : "as converted"}.
				</p>
			)}
		</div>
	);
}
