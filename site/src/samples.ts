// Invented pots of an invented workshop, to open with and to learn from: one for
// each way to part a mold. Each is a job that says only what it is about; the
// core completes it. What each is called and shows stands in the table of words, by its English name.
import reel from "../samples/reel-bottle.json";
import buoy from "../samples/cone-buoy.json";
import dovetail from "../samples/dovetail-dish.json";
import hail from "../samples/hail-beaker.json";
import jar from "../samples/harbour-jar.json";
import vase from "../samples/heron-vase.json";
import dish from "../samples/quay-dish.json";
import beaker from "../samples/reed-beaker.json";
import cup from "../samples/reed-cut-cup.json";
import amphora from "../samples/sand-amphora.json";
import skep from "../samples/skep-pot.json";
import skiff from "../samples/skiff-vase.json";
import lid from "../samples/slate-lid.json";
import trivet from "../samples/trivet-vase.json";
import type { Job } from "./contract";
import { tables, w } from "./words";

/** The first is what a first visit opens on; the build has the core complete it. */
export const samples = [
  jar, beaker, dish, skep, cup, lid, amphora, vase, skiff, buoy, trivet, hail, reel, dovetail,
] as unknown as Job[];

/** A sample as it goes on the bench: under its name in the language of the page. */
export const named = (s: Job): Job => ({ ...s, name: w.samples[s.name]?.[0] ?? s.name });

/** Whether a job bears the sample's name in any language. */
export const isNamed = (s: Job, name: string): boolean => Object.values(tables).some((t) => t.samples[s.name]?.[0] === name);
