/**
 * Words of the trade that mean the same, or nearly. One line is one group, its readings apart by commas; a reading
 * may be several words. `same` groups are two names of one thing: the vocabularies of two regions, abbreviations,
 * two spellings. `near` groups are what different people say of the same trouble. Only general words of lift work
 * and maintenance belong here; a word may stand in several groups.
 */
export interface WordGroup {
  readonly closeness: "same" | "near";
  readonly readings: readonly string[];
}

const same = `
lift, elevator
landing, floor, hall, storey, story, flr, ldg
car, cabin, cab
shaft, hoistway, liftwell, lift well
unlocking zone, door zone, doorzone
callout, call out, callback, call back, breakdown, service call
counterweight, counter weight, cwt, cw
governor, overspeed governor, speed governor, gov, osg
safety gear, safeties, parachute gear
safety chain, safety circuit, safety line, safety string
machine room, motor room, plant room
machine room less, machineroomless, mrl
traction sheave, drive sheave, driving sheave
deflector, diverter, diverter pulley, deflector pulley
compensation, compensating, comp
travelling cable, traveling cable, trailing cable, trailer, travelling flex
suspension ropes, hoist ropes, main ropes, lifting ropes
rope, cable
car top, top of car, toc
inspection control, inspection mode, inspection operation, top of car control
emergency electrical operation, recall control, electrical recall
unintended car movement, ucm, ucmp
door, dr, drs
door operator, door drive, door motor, door machine, operator
door edge, safety edge, door detector, light curtain, light ray, photocell, curtain, door protection
landing door, hall door, shaft door, hoistway door
car door, cabin door
door lock, interlock, landing door lock, door interlock
door contact, gate switch, door switch
door couplers, door vane, door clutch, coupler, skate
push button, pushbutton, button, btn, pb
landing panel, hall panel, landing station, hall station, landing fixture, lop
car panel, car operating panel, car station, cop
position indicator, indicator, display, pi
control panel, controller, control cabinet, ctl, ctrl, ctrlr, cntrl
printed circuit board, circuit board, board, pcb, card
motor, mtr
machine, winding machine, hoist machine
gearbox, gear box, gear unit
brake, brk, brakes
contactor, cont, contr
relay, rly
switch, sw, swt
sensor, detector, sens
magnet, vane, flag
terminal, term
voltage, volts
power supply, psu, supply unit
uninterruptible power supply, ups
variable frequency drive, frequency converter, inverter, vfd, vvvf, vf drive, drive
encoder, pulse generator, tacho
hydraulic, hydraulics, hyd, hydr
jack, ram, piston
cylinder, cyl
valve block, valve, vlv
power pack, power unit, pump unit, tank unit
pipe rupture valve, rupture valve, burst valve
buffer, bumper
pit, lift pit
pit stop, pit switch, pit stop switch
final limit, final limit switch, ultimate limit, terminal limit
slowdown switch, terminal slowdown, slow down switch, decel switch
levelling, leveling, level
relevelling, releveling, re levelling
mislevelled, misleveled, off level, out of level, not level, step at landing, trip hazard, stops short, overshoots
guide shoe, slide shoe, slipper, shoe, gibs
roller guide, roller guides, guide rollers
guide rail, rail
intercom, autodialler, autodialer, alarm unit, emergency telephone, emergency phone
alarm button, alarm push
lamp, light, bulb, globe, tube, lighting
fan, ventilator, vent
temperature, temp
pressure, press
oil, lubricant
lubrication, lubricate, lube, grease, greasing
hydraulic oil, hydraulic fluid
hours, hrs
left hand, left, lh, l/h
right hand, right, rh, r/h
maintenance, service, servicing, maint
engineer, mechanic, technician, fitter
passenger, person, people, pax
trapped, entrapment, entrapped, shut in, mantrap, stuck inside, stuck in lift, locked in
colour, color
metre, meter
centre, center
grey, gray
aluminium, aluminum
tyre, tire
earth, ground
mains, incoming supply
fuse, fuses
circuit breaker, breaker, mcb, cb
residual current device, earth leakage breaker, rcd, gfci
emergency, emerg, emg
number, num, nr
between, btwn
replacement, replace, replaced, change out, changeout, changed out, renew, renewed, exchange, exchanged, swap out, r/r
repair, fix, rectify, mend, make good
adjust, adjustment, readjust, realign, set up
inspect, inspection, examine, check, insp
install, fit, fitted, mount
`;

const near = `
swapped, crossed, reversed, wrong order, wrong sequence, interchanged, transposed, wrong way round, mixed up, back to front
not working, unserviceable, broken, faulty, fault, failed, failure, defective, inoperative, inop, u/s, dead, out of order, out of service, o/s, does not work, doesnt work, wont work, not operating, not functioning, malfunction, no good, kaput, bust
broken, snapped, cracked, fractured, split, sheared
damaged, damage, bent, dented, smashed, vandalised, vandalized
leak, leaking, leakage, weeping, dripping, seeping, loss of oil
worn, worn out, wear, shot, perished, bald, thin
blown, burst, ruptured, split
blown, tripped, gone
stuck, jammed, seized, frozen, binding, caught, will not move, wont move
stopped, stopping, halted, stands, stalled, shut down, lift stuck, not running, wont run, does not run, no movement
trapped, stuck, stopped
reopening, reopens, re opening, opens again, doors reversing, door reversing, bouncing back, wont close, not closing, will not close, keeps opening
wont open, not opening, will not open, does not open
noise, noisy, squeal, squeaking, grinding, rattle, rattling, knocking, screech, screeching, banging, rumble, rumbling, humming, loud
vibration, vibrating, shaking, shudder, juddering, judder, jerking, jerky, jolt, rough ride, bouncing, jumping
overheating, overheated, hot, high temperature, over temperature, burning, burnt, thermal trip
smoke, smoking, burning, burning smell, fire
loose, slack, wobbly, coming off, undone
missing, lost, gone, absent, not there, disappeared
intermittent, intermittently, sporadic, now and then, sometimes, occasional, occasionally, random, on and off
blocked, plugged, clogged, obstructed, obstruction
dirty, contaminated, fouled, dusty, debris
wet, water, flooded, flooding, flood, damp, water ingress, moisture
corroded, rust, rusty, corrosion, rusted
slow, sluggish, crawling, low speed
fast, overspeed, too fast, over speed
low, short, below
high, above, overshoot
open circuit, broken wire, wire off, disconnected, loose wire, loose connection, bad connection, poor connection
short circuit, shorted, shorting, earth fault, ground fault
no power, dead, power loss, lost power, power failure, power cut, outage
not lit, lamp out, not lighting, light out, no light
no response, not responding, unresponsive, does not answer, ignores
slipping, slip, sliding, creeping
sinking, sinks, creeps down, drifting, drift, settling
misaligned, misalignment, out of line, out of adjustment, out of alignment
error, fault code, error code, alarm, fault
switched off, turned off, isolated
`;

function readGroups(table: string, closeness: WordGroup["closeness"]): WordGroup[] {
  return table
    .trim()
    .split("\n")
    .map((line) => ({ closeness, readings: line.split(",").map((reading) => reading.trim()) }));
}

export const tradeWords: readonly WordGroup[] = [...readGroups(same, "same"), ...readGroups(near, "near")];
