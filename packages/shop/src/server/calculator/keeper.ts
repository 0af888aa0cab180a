/** Finds what the faults of a car do to its codes and functions, keeps it, and ends. */
import { workerData } from "node:worker_threads";
import { finderOf, openCar } from "@loomwright/engine";
import { keepEffects } from "../../kept/effects.js";
import { KeptFolder } from "../../kept/folder.js";
import type { ToKeep } from "./effects-keeper.js";

const { folder, tables, evidence } = workerData.told as ToKeep;
keepEffects(finderOf(openCar(tables), evidence), new KeptFolder(folder));
