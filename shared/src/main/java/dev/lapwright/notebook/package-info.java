/**
 * The notebook of an event: a folder with the documents of car, circuit and day, and one plain text file for each run. Read, added to so that no
 * run is lost, and handed on as one file. What the runs show is for {@link dev.lapwright.evidence} to say.
 */
package dev.lapwright.notebook;
