/**
 * Texts read from files with their names, what is wrong with them, and files written whole or not at all.
 */
package dev.lapwright.files;
