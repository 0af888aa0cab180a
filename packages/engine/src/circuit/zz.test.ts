import { it } from "vitest";
import { openCar } from "../car.js";
import { Batch, Kept } from "./batch.js";

it("bug 2", () => {
	const car = openCar({
		"parts.csv": "part,kind,values\nBAT,battery,\nR,resistor,ohms=10\nSTUB,fuse,amps=5",
		"contacts.csv": "contact,part,connector,cavity,role\nBAT.+,BAT,,,+\nBAT.-,BAT,,,-\nR.1,R,,,a\nR.2,R,,,b\nSTUB.1,STUB,,,in\nSTUB.2,STUB,,,out",
		"joints.csv": "joint,kind\nX,splice\nZ,splice\nG,ground",
		"wires.csv": "wire,from,to,size,length\nW1,BAT.+,X,2.5,1\nW2,X,R.1,2.5,1\nW3,R.2,Z,2.5,1\nW4,Z,G,2.5,1\nW5,BAT.-,G,2.5,1\nB,X,STUB.1,2.5,1",
		"conditions.csv": "condition,subject,state\non,BAT,on",
	});
	const c = car.circuit("delivered");
	const branch = c.branchesOf.get("B")![0]!;
	const stub = c.node("STUB.1")!;
	const z = c.node("Z")!;
	const x = c.node("X")!;
	const batch = new Batch(new Kept(c, c.standing("on")), [
		{ kind: "volts", a: stub, b: -1 },
		{ kind: "volts", a: x, b: -1 },
		{ kind: "volts", a: x, b: stub },
	]);
	const change = { branches: [{ branch, siemens: 0 }], added: [{ a: stub, b: z, siemens: 20 }] };
	console.log("quick", batch.evaluate(change), "full", batch.solveAnew(change).values);
});
it("bug 1", () => {
	const car = openCar({
		"parts.csv": "part,kind,positions\nS,switch,off:; on:1-2",
		"contacts.csv": "contact,part,role\nS.1,S,1\nS.2,S,2",
		"joints.csv": "joint,kind\nJ,splice\nK,splice",
		"wires.csv": "wire,from,to,size,length\nW1,S.1,J,1,1\nW2,S.2,J,1,1\nL,J,K,1,1\nL2,K,J,1,1",
		"conditions.csv": "condition,subject,state\nx,S,off",
	});
	const c = car.circuit("delivered");
	c.branches.forEach((b, branch) => {
		const batch = new Batch(new Kept(c, c.standing("x")), [{ kind: "volts", a: 0, b: 3 }]);
		try {
			batch.evaluate({ branches: [{ branch, siemens: 0 }], added: [] });
		} catch (e) {
			console.log(branch, JSON.stringify(b.owner), (e as Error).stack?.split("\n").slice(0, 5).join("\n"));
		}
	});
});
