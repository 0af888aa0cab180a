/** What went wrong, in words, with what to do: server away, tables to mend by row and column, a refused question, an engine error. */
import { Button } from "@mantine/core";
import { EngineFault } from "../engine/engine-fault.js";
import { ServerFault } from "../server/api.js";
import { TableErrorList } from "./TableErrorList.js";

interface FaultNoticeProps {
	readonly title: string;
	readonly error: Error;
	/** Tries once more. */
	readonly again?: () => unknown;
}

export function FaultNotice({ title, error, again }: FaultNoticeProps) {
	const server = error instanceof ServerFault ? error : undefined;
	const tables = error instanceof EngineFault ? error.errors : (server?.errors ?? []);
	return (
		<section className="notice stack" data-tone="stop" role="alert">
			<h2>{server?.away ? "The shop's server is away" : title}</h2>
			{tables.length > 0 ? <TableErrorList errors={tables} /> : <p>{error.message}</p>}
			{server?.toDo && tables.length === 0 && <p>{server.toDo}</p>}
			{again && (
				<Button variant="default" onClick={() => again()}>
					Try again
				</Button>
			)}
		</section>
	);
}
