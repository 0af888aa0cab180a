/** The whole in minutes: work, material and risk of the proposal, beside its rivals on one scale. */
import type { Price, Proposal } from "../../server/choosing.js";
import { count, duration, percent } from "../../shared/words.js";

/** A bar goes no farther than so many times the best; a longer one ends torn off. */
const FARTHEST = 2;

interface Rival {
	readonly name: string;
	/** Undefined: it cannot be done that way. */
	readonly minutes: number | undefined;
	readonly joints: number;
	/** Undefined: only its sum is known. */
	readonly price: Price | undefined;
	readonly best: boolean;
}

/** Names of the ways to do the whole, as a shop says them. */
const NAMES: Readonly<Record<string, string>> = {
	"work on the loom": "Work on the loom",
	"overlay loom": "A second loom laid over it",
	"new loom": "A new loom in its place",
};

export function Whole({ proposal }: { proposal: Proposal }) {
	const { way, minutes, gap, price, byHand, alternatives } = proposal;
	const rivals: Rival[] = alternatives.map((one) => ({
		name: NAMES[one.way] ?? one.way,
		minutes: one.minutes ?? undefined,
		joints: one.joints,
		price: one.way === way ? price : undefined,
		best: one.way === way,
	}));
	if (byHand) rivals.push({ ...byHand, name: "The recipe as it is now", best: false });
	const most = Math.min(FARTHEST * minutes, Math.max(...rivals.map((rival) => rival.minutes ?? 0)));
	const joints = alternatives.find((one) => one.way === way)?.joints ?? 0;
	return (
		<section className="sheet stack aside" aria-label="The whole">
			<dl className="figures">
				<div>
					<dt>in all, as time</dt>
					<dd>{duration(minutes)}</dd>
				</div>
				<div>
					<dt>of work</dt>
					<dd>{duration(price.minutes)}</dd>
				</div>
				<div>
					<dt>material, shop's money</dt>
					<dd>{price.material.toFixed(2)}</dd>
				</div>
				<div>
					<dt>fault finding, from its joints</dt>
					<dd>{duration(price.risk)}</dd>
				</div>
				<div>
					<dt>made on the way</dt>
					<dd>{count(joints, "joint")}</dd>
				</div>
			</dl>
			<p>
				{gap < 1e-6
					? "Proved: no other choice of those offered costs less."
					: `No other choice can cost more than ${percent(gap)} less.`}
			</p>
			<ul className="rivals">
				{rivals.map((rival) => (
					<li key={rival.name} data-best={rival.best || undefined}>
						<span className="rival-name">
							{rival.name}
							<span className="soft"> {count(rival.joints, "joint")}</span>
						</span>
						<Bar rival={rival} most={most} />
						<span className="rival-sum">
							{rival.minutes === undefined ? "not possible" : duration(rival.minutes)}
						</span>
					</li>
				))}
			</ul>
			<p className="rival-key" aria-hidden="true">
				<span className="bar-work" /> work <span className="bar-risk" /> risk{" "}
				<span className="bar-material" /> material
			</p>
		</section>
	);
}

/** The bar's length is the sum; its parts are told where they are known. */
function Bar({ rival: { minutes, price }, most }: { rival: Rival; most: number }) {
	if (minutes === undefined) return <span className="bar" />;
	const share = (part: number) => ({ width: `${Math.min(100, (100 * part) / most)}%` });
	if (!price)
		return (
			<span className="bar">
				<span className="bar-sum" data-torn={minutes > most || undefined} style={share(minutes)} />
			</span>
		);
	return (
		<span className="bar">
			<span className="bar-work" style={share(price.minutes)} />
			<span className="bar-risk" style={share(price.risk)} />
			<span className="bar-material" style={share(Math.max(0, minutes - price.minutes - price.risk))} />
		</span>
	);
}
