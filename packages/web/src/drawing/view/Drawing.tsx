/** A circuit drawing on the screen: asked of the engine, laid out, moved by touch; a tap on a wire tells about it. */
import type { Which } from "@loomwright/engine";
import { Button } from "@mantine/core";
import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useSheet } from "../../engine/hooks.js";
import { FaultNotice } from "../../shared/FaultNotice.js";
import { Working } from "../../shared/Working.js";
import { layOut } from "../layout/layout.js";
import { ConditionChoice } from "./ConditionChoice.js";
import { DrawingFrame } from "./DrawingFrame.js";
import { WireList } from "./WireList.js";
import { WirePanel } from "./WirePanel.js";

interface DrawingProps {
	readonly which: Which;
	/** Contacts, wires, joints and parts to draw. */
	readonly path: readonly string[];
	/** Condition to start with; the person may choose another. */
	readonly when?: string;
	/** Contacts and joints marked by a letter. */
	readonly leads?: ReadonlyMap<string, string>;
	/** A contact or joint was tapped. */
	readonly onPoint?: (name: string) => void;
}

const NO_LEADS: ReadonlyMap<string, string> = new Map();
const MOST_FURTHER = 3;

export function Drawing({ which, path, when: first = "", leads = NO_LEADS, onPoint }: DrawingProps) {
	const [chosen, setChosen] = useState("");
	const [further, setFurther] = useState(0);
	const [wire, setWire] = useState("");
	const when = chosen || first;
	const sheet = useSheet({ which, path, when, further });
	const placed = useQuery({
		queryKey: ["placed", sheet.data],
		queryFn: () => layOut(sheet.data!),
		enabled: sheet.data !== undefined && sheet.data.nodes.length > 0,
		placeholderData: keepPreviousData,
		staleTime: Number.POSITIVE_INFINITY,
		retry: false,
	});
	const error = sheet.error ?? placed.error;
	if (error) return <FaultNotice title="This cannot be drawn" error={error} />;
	if (sheet.data?.nodes.length === 0)
		return <p className="soft">There is nothing to draw: {path.join(", ") || "no path"}.</p>;
	if (!sheet.data || !placed.data) return <Working what="Drawing the circuit" />;
	return (
		<section className="drawing stack" aria-label="Circuit drawing">
			<DrawingFrame
				sheet={sheet.data}
				placed={placed.data}
				selected={wire}
				leads={leads}
				onWire={setWire}
				{...(onPoint && { onPoint })}
			>
				<Button
					variant="default"
					disabled={!sheet.data.more || further >= MOST_FURTHER}
					onClick={() => setFurther(further + 1)}
				>
					More wires
				</Button>
				<Button variant="default" disabled={further === 0} onClick={() => setFurther(further - 1)}>
					Fewer wires
				</Button>
			</DrawingFrame>
			<ConditionChoice which={which} value={when} onChange={setChosen} label="Drawn as in" atRest />
			{wire !== "" && <WirePanel which={which} wire={wire} when={when} close={() => setWire("")} />}
			<WireList wires={sheet.data.wires} selected={wire} onWire={setWire} />
		</section>
	);
}
