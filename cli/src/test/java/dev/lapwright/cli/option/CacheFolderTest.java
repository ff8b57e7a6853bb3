package dev.lapwright.cli.option;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Where what was found is kept: the XDG Base Directory Specification, and the custom of Windows; both from memory. */
class CacheFolderTest {
    private static String folder(Map<String, String> environment, String system, String home) {
        return CacheFolder.of(environment::get, system, home)
                .map(Path::toString)
                .orElse("none");
    }

    @Test
    void theVariableNamesTheFolder() {
        assertThat(folder(Map.of("XDG_CACHE_HOME", "/var/kept"), "Linux", "/home/me"))
                .isEqualTo("/var/kept/lapwright");
    }

    @Test
    void withoutItItIsTheUsersOwn() {
        assertThat(folder(Map.of(), "Linux", "/home/me")).isEqualTo("/home/me/.cache/lapwright");
        assertThat(folder(Map.of("XDG_CACHE_HOME", ""), "Mac OS X", "/Users/me"))
                .isEqualTo("/Users/me/.cache/lapwright");
    }

    /** The specification: all paths set in these variables must be absolute; a relative one is to be ignored. */
    @Test
    void aRelativePathIsIgnored() {
        assertThat(folder(Map.of("XDG_CACHE_HOME", "kept"), "Linux", "/home/me"))
                .isEqualTo("/home/me/.cache/lapwright");
    }

    @Test
    void nowhereIsNowhere() {
        assertThat(folder(Map.of(), "Linux", "?")).isEqualTo("none");
        assertThat(folder(Map.of(), "Linux", "")).isEqualTo("none");
        assertThat(folder(Map.of("XDG_CACHE_HOME", "/var/kept"), "Windows 11", "C:\\me"))
                .isEqualTo("none");
    }

    @Test
    void windowsHasAVariableOfItsOwn() {
        assertThat(folder(Map.of("LOCALAPPDATA", "/local"), "Windows 11", "")).isEqualTo("/local/lapwright/cache");
    }
}
