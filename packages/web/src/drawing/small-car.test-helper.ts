/** A car small enough to reckon by hand: a lamp behind fuse, switch and relay; a sensor at a control unit through a connector. */
import { openCar } from "@loomwright/engine";

const parts = `part,kind,label,values,positions
BAT,battery,starter battery,,
F1,fuse,lamp fuse,amps=10,
S1,switch,lamp switch,,off:;on:1-2
K1,relay,lamp relay,,
L1,lamp,work lamp,watts=21,
ECU,control unit,engine unit,,
B1,thermistor,coolant sensor,,
X1,connector,bulkhead plug,,
XE,connector,unit plug,,
`;
const contacts = `contact,part,connector,cavity,role,label
BAT.+,BAT,,,+,
BAT.-,BAT,,,-,
F1.in,F1,,,in,
F1.out,F1,,,out,
S1.1,S1,,,1,
S1.2,S1,,,2,
K1.85,K1,,,85,
K1.86,K1,,,86,
K1.30,K1,,,30,
K1.87,K1,,,87,
L1.a,L1,,,a,
L1.b,L1,,,b,
ECU.1,ECU,XE,1,supply,
ECU.2,ECU,XE,2,ground,
ECU.3,ECU,XE,3,input pull-up,coolant signal
ECU.4,ECU,XE,4,sensor return,
B1.1,B1,,,a,
B1.2,B1,,,b,
X1.1a,X1,,1,a,
X1.1b,X1,,1,b,
`;
const wires = `wire,from,to,size,colour,length,circuit
W1,BAT.+,F1.in,2.5,RD,1 m,30
W2,F1.out,SP1,2.5,RDWH,1 m,30
W3,SP1,K1.30,2.5,RDWH,1 m,30
W4,SP1,S1.1,0.75,RDWH,1 m,30
W5,S1.2,K1.86,0.75,BKBU,1 m,lamp
W6,K1.85,G1,0.75,BN,1 m,31
W7,K1.87,L1.a,1.5,BKYE,2 m,lamp
W8,L1.b,G1,1.5,BN,1 m,31
W9,BAT.-,G1,16,BK,0.5 m,31
W10,SP1,ECU.1,0.75,RDWH,1 m,30
W11,ECU.2,G1,1,BN,1 m,31
W12,ECU.3,X1.1a,0.5,GNBU,1 m,coolant
W13,X1.1b,B1.1,0.5,GNBU,1 m,coolant
W14,B1.2,ECU.4,0.5,BNVT,2 m,coolant
W15,SP1,stowed,0.75,RDWH,1 m,30
`;
const joints = `joint,kind,label
SP1,splice,
G1,ground,left wheel arch
`;
const conditions = `condition,title,subject,state
rest,at rest,BAT,on
lamp-on,lamp on,like,rest
lamp-on,,S1,on
off,battery off,BAT,off
`;

export const SMALL_CAR = {
	"parts.csv": parts,
	"contacts.csv": contacts,
	"wires.csv": wires,
	"joints.csv": joints,
	"conditions.csv": conditions,
};

export const smallLoom = () => openCar(SMALL_CAR).delivered;
