/**
 * Documents of car, setup, circuit, conditions and line: found, read, checked and written; and the demos. No physics.
 */
package dev.lapwright.documents;
