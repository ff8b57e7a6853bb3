/**
 * What a study has to say, said once: facts, tables with declared columns, sentences. Terminal, JSON, CSV and page are four
 * renderings of it. Nothing here knows any study.
 */
package dev.lapwright.report;
