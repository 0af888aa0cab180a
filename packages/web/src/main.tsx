/** Starts the app. */
import "./app/mantine.css";
import "./app/styles.css";
import "./app/frame.css";
import "./app/pieces.css";
import "./app/drawing.css";
import "./app/choosing.css";
import "./features/start/start.css";
import "./features/plan/plan.css";
import "./features/size/size.css";
import "./features/what-if/what-if.css";
import "./features/transfer/transfer.css";
import "./features/changes/changes.css";
import "./features/checks/checks.css";
import "./features/reading/reading.css";
import "./features/meter/meter.css";
import "./features/prove/prove.css";
import "./features/power/power.css";
import "./features/find/find.css";
import "./features/people/people.css";
import { MantineProvider } from "@mantine/core";
import { QueryCache, QueryClient, QueryClientProvider } from "@tanstack/react-query";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { App } from "./app/App.js";
import { theme } from "./app/theme.js";
import { ServerFault } from "./server/api.js";

/** A working day, or a guest's link, may end while the page is open. */
const queryCache = new QueryCache({
	onError(error) {
		if (error instanceof ServerFault && error.status === 401)
			void queries.invalidateQueries({ queryKey: ["session"] });
	},
});

const queries = new QueryClient({
	queryCache,
	defaultOptions: {
		queries: { retry: 1, refetchOnWindowFocus: false, staleTime: 30_000, networkMode: "always" },
	},
});

createRoot(document.getElementById("root")!).render(
	<StrictMode>
		<MantineProvider theme={theme} defaultColorScheme="auto">
			<QueryClientProvider client={queries}>
				<App />
			</QueryClientProvider>
		</MantineProvider>
	</StrictMode>,
);

// Only on https, or on this machine itself, does a browser let an app keep itself for when the network is away.
if (import.meta.env.PROD && "serviceWorker" in navigator)
	navigator.serviceWorker.register("/sw.js").catch((error: unknown) => console.warn(error));
