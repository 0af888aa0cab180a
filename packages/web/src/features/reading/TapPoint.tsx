/** Asks which lead goes to the point that was tapped. */
import { Button } from "@mantine/core";

interface TapPointProps {
	readonly point: string;
	readonly onLead: (lead: "from" | "to") => void;
	readonly close: () => void;
}

export const TapPoint = ({ point, onLead, close }: TapPointProps) => (
	<div className="panel tap-point stack" role="status">
		<strong className="mono">{point}</strong>
		<Button onClick={() => onLead("from")}>Lead 1 here</Button>
		<Button onClick={() => onLead("to")}>Lead 2 here</Button>
		<Button variant="default" onClick={close}>
			Neither
		</Button>
	</div>
);
