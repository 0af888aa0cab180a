/** The frame: header with the line of work, the stage one is in, the standing caution. */
import { Changes } from "../features/changes/Changes.js";
import { Checks } from "../features/checks/Checks.js";
import { Find } from "../features/find/Find.js";
import { Gate } from "../features/people/Gate.js";
import { Plan } from "../features/plan/Plan.js";
import { PowerUp } from "../features/power/PowerUp.js";
import { Prove } from "../features/prove/Prove.js";
import { ReadingStage } from "../features/reading/ReadingStage.js";
import { Sizes } from "../features/size/Sizes.js";
import { Start } from "../features/start/Start.js";
import { Transfer } from "../features/transfer/Transfer.js";
import { Versions } from "../features/versions/Versions.js";
import { WhatIf } from "../features/what-if/WhatIf.js";
import { Caution } from "./Caution.js";
import { CarProvider } from "./car.js";
import { Header } from "./Header.js";
import { type Stage, useRoute } from "./route.js";
import { TablesNews } from "./TablesNews.js";

const STAGE_VIEWS: Readonly<Record<Stage, () => React.ReactNode>> = {
	start: Start,
	plan: Plan,
	size: Sizes,
	"what-if": WhatIf,
	transfer: Transfer,
	versions: Versions,
	changes: Changes,
	checks: Checks,
	reading: ReadingStage,
	prove: Prove,
	power: PowerUp,
	find: Find,
};

export function App() {
	const { job, stage } = useRoute();
	const View = STAGE_VIEWS[stage];
	const bare = (message: React.ReactNode) => <Frame stage={stage}>{message}</Frame>;
	return (
		<Gate bare={bare}>
			<CarProvider id={job} bare={bare}>
				<Frame stage={stage}>
					<TablesNews />
					<View />
				</Frame>
			</CarProvider>
		</Gate>
	);
}

function Frame({ stage, children }: { stage: Stage; children: React.ReactNode }) {
	return (
		<div className="app">
			<Header stage={stage} />
			<main className="stage" key={stage}>
				{children}
			</main>
			<Caution />
		</div>
	);
}
