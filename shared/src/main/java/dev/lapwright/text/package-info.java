/** JSON and comma-separated values as text. Knows no car, no circuit and no result; not exported. */
package dev.lapwright.text;
