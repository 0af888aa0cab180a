import { useSyncExternalStore } from "react";
import { type QueueState, queueState, watchQueue } from "./queue.js";

/** What waits on this tablet, as it changes. */
export const useQueue = (): QueueState => useSyncExternalStore(watchQueue, queueState);
