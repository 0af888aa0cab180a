/** The wire that was in a cavity and the wire that is there now. */
import type { Change } from "@loomwright/engine";
import { WireSwatch } from "../../shared/WireSwatch.js";
import { lengthWords } from "../../shared/wire-words.js";

type Joined = NonNullable<Change["before"]>;

export function WasIs({ change }: { change: Change }) {
	if (!change.before && !change.after) return <p className="was-is">{change.text}</p>;
	return (
		<dl className="was-is">
			<Side word="was" joined={change.before} />
			<Side word="now" joined={change.after} />
		</dl>
	);
}

const MOST_PLACES = 4;

function Side({ word, joined }: { word: string; joined: Joined | undefined }) {
	return (
		<div>
			<dt>{word}</dt>
			<dd>{joined ? <JoinedWire joined={joined} /> : <span className="soft">empty</span>}</dd>
		</div>
	);
}

function JoinedWire({ joined: { wire, reaches } }: { joined: Joined }) {
	const splices = [...new Set(reaches.flatMap((reach) => reach.splices))];
	const places = reaches.length > MOST_PLACES ? reaches.slice(0, MOST_PLACES - 1) : reaches;
	return (
		<>
			<WireSwatch colours={wire.colours} />
			<span>
				<strong className="mono">{wire.id}</strong> {wire.colours.join("")} {wire.mm2} mm²,{" "}
				{lengthWords(wire.metres)}
				{splices.length > 0 && (
					<>
						, by {splices.length === 1 ? "splice" : "splices"} <Names names={splices} />
					</>
				)}{" "}
				to <Names names={places.map(({ place }) => place)} />
				{places.length < reaches.length && ` and ${reaches.length - places.length} more`}
			</span>
		</>
	);
}

/** Names that do not break at their hyphens. */
const Names = ({ names }: { names: readonly string[] }) =>
	names.map((name, k) => (
		<span key={name}>
			{k > 0 && ", "}
			<span className="unbroken">{name}</span>
		</span>
	));
