// Invented pots of an invented workshop, to open with and to learn from: each a
// job that says only what it is about; the core completes it.
import bowl from "../samples/fen-bowl.json";
import bottle from "../samples/float-bottle.json";
import jar from "../samples/harbour-jar.json";
import vase from "../samples/heron-vase.json";
import beaker from "../samples/reed-beaker.json";
import closed from "../samples/skep-pot.json";
import type { Job } from "./contract";

export const samples = [jar, bowl, beaker, vase, bottle, closed] as unknown as Job[];
