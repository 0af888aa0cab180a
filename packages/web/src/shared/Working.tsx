/** Says what is being computed or fetched. */
import { Loader } from "@mantine/core";

export const Working = ({ what }: { what: string }) => (
	<div className="working" role="status">
		<Loader size="md" type="dots" aria-hidden="true" />
		<span>{what} …</span>
	</div>
);
