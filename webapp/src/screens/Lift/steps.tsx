/**
 * The steps of lifting an axle, in the order they are done. What each asks for is common practice (no source) around
 * the measurement of ISO 10392; who does it, and whether, is for trained people and the rule book to say.
 */
import type { VNode } from "preact";
import type { Rec } from "../../journal/types";
import { Notice } from "../../parts/frame/Notice";
import { Answer } from "./Answer";
import type { LiftForm } from "./form";
import { HowFar, LevelCar, Measured, OnTheGround, TankThen } from "./stepBodies";

export type StepProps = { form: LiftForm; change: (patch: Partial<LiftForm>) => void; weighIn: Rec<"weigh_in"> };
/** `done`: what a person says on going on. */
type Step = { title: string; done: string; Body: (props: StepProps) => VNode };

export const STEPS: readonly Step[] = [
  { title: "Before anything is raised", done: "We can do this safely", Body: Safety },
  { title: "The car as it stood level", done: "It stands just like that", Body: LevelCar },
  { title: "Tank full, or empty", done: "The tank is right", Body: TankThen },
  { title: "Lock the suspension", done: "Nothing moves", Body: Suspension },
  { title: "Wheels free, axle chocked", done: "Free, and chocked", Body: Rolling },
  { title: "Which axle, and how far", done: "It is raised and stands safely", Body: HowFar },
  { title: "Measure the rise", done: "Both sides are measured", Body: Measured },
  { title: "Read the axle on the ground", done: "That is what it shows", Body: OnTheGround },
  { title: "The height", done: "", Body: Answer },
];

/** The first step at which a number is typed. */
export const MEASURING = 6;

function Safety() {
  return (
    <>
      <Notice sort="caution">
        <p>
          <strong>A raised car can roll or fall, and kills.</strong> Only people trained in lifting cars do this. The
          car maker's instructions, the rule book and local law come first.
        </p>
      </Notice>
      <ul>
        <li>Nobody in the car and nobody under it, from the first centimetre to the last.</li>
        <li>Lift and stands rated for the load, on hard, level ground, at the maker's lifting points only.</li>
        <li>One person watches the chocked axle all the time, and everybody stops when that person says so.</li>
        <li>Fuel cap on, no leaks, no flames; battery and loose things fastened.</li>
        <li>Look at what will touch: bumper, exhaust and lips at the end that stays down.</li>
      </ul>
    </>
  );
}

function Suspension() {
  return (
    <>
      <p>Tyres at the pressures they had when the car was weighed level.</p>
      <p>Block the springs solid: bars in place of dampers, or fitted blocks that cannot fall out.</p>
      <p>
        <strong>How to tell:</strong> lean on each corner with your whole weight. The wing must not come any nearer the
        ground. If it does, the car squats as it is raised, and the height comes out too great.
      </p>
    </>
  );
}

function Rolling() {
  return (
    <>
      <p>Gearbox in neutral, hand brake off, so that no wheel pushes or pulls at its pad.</p>
      <p>
        Chock the axle that <strong>stays on the ground</strong>, before and behind, on the pads themselves. The same
        chocks lie there when the pads are set to zero, so they do not count.
      </p>
      <p>Someone stays at the chocked wheels until the car is level again.</p>
    </>
  );
}
