// Asking the core's op "exercise".
import { coreOf, parse, type Refusal } from "../state";

export async function exercise<T extends object>(request: object): Promise<T | Refusal> {
  const a = await coreOf().ask("exercise", request);
  return parse<T>(a!.reply);
}
