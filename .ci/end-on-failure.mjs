// While code is mutated a random test that fails has done its work: no smaller example is looked for.
import fc from "fast-check";

fc.configureGlobal({ endOnFailure: true });
