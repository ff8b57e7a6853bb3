/** Cars on lines of their own: what a choice is worth once the line is found anew for each. */
package dev.lapwright.study.lines;
