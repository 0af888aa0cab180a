/** Where the two leads go, with the meter between them: what it is set to and what it must show. */
import { useCar } from "../../app/car.js";
import { pointsOf } from "../../shared/points.js";
import { WireSwatch } from "../../shared/WireSwatch.js";
import { colourNames } from "../../shared/wire-words.js";
import { type Band, bandWords, openWords } from "./band.js";

export interface LeadAt {
	/** Contact or joint; empty where only the words are known. */
	readonly id: string;
	/** In words, with the id. */
	readonly words: string;
	/** Where on the car; empty where the words say it. */
	readonly place: string;
	/** The lead was there for the reading before. */
	readonly stays: boolean;
}

interface LeadsProps {
	readonly first: LeadAt;
	readonly second: LeadAt;
	readonly band: Band;
}

/** What the meter is set to. */
const SETTINGS = {
	ohm: { dial: "Ω", words: "Ohms" },
	V: { dial: "V", words: "Volts, direct current" },
	A: { dial: "A", words: "Amperes, direct current: clamp, or in line with the leads" },
} as const;

export function Leads({ first, second, band }: LeadsProps) {
	const { dial, words } = SETTINGS[band.unit];
	const open = openWords(band);
	return (
		<div className="leads">
			<Lead lead={first} number={1} colour="red" />
			<div className="leads-meter">
				<span className="leads-dial" aria-hidden="true">
					{dial}
				</span>
				<div>
					<p className="soft">Meter at: {words}</p>
					<p className="leads-band">
						<span className="soft">must show</span> {bandWords(band)}
					</p>
					{open !== "" && <p className="soft">{open}</p>}
				</div>
			</div>
			<Lead lead={second} number={2} colour="black" />
		</div>
	);
}

function Lead({ lead, number, colour }: { lead: LeadAt; number: 1 | 2; colour: "red" | "black" }) {
	const { id, words, place, stays } = lead;
	const colours = pointsOf(useCar().car.converted).find((point) => point.id === id)?.colours ?? [];
	const [name, rest] = id !== "" && words.startsWith(id) ? [id, words.slice(id.length).trim()] : ["", words];
	return (
		<section
			className="lead-at"
			data-lead={colour}
			data-stays={stays || undefined}
			aria-label={`Lead ${number}, ${colour}`}
		>
			<p className="lead-head">
				<span>
					Lead {number}, {colour}
				</span>
				{stays && <span className="tag">stays where it is</span>}
			</p>
			{place !== "" && <p className="lead-place cap">{place}</p>}
			<p className="lead-name">
				{name !== "" && <strong className="mono">{name}</strong>}{" "}
				{colours.length > 0 && <WireSwatch colours={colours} />}{" "}
				{colours.length > 0 && <span className="lead-colour">{colourNames(colours)}</span>}
			</p>
			{rest !== "" && <p className={name === "" ? "lead-words" : undefined}>{rest}</p>}
		</section>
	);
}
