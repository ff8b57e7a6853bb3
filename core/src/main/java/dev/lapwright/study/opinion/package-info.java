/** What the fuller model of {@link dev.lapwright.slip} says of changes that the fast one recommends. */
package dev.lapwright.study.opinion;
