/** Reports of what was done to a circuit: what an import made of a survey, what an edit changed. */
package dev.lapwright.results.circuit;
