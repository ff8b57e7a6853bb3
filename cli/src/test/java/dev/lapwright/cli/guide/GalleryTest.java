package dev.lapwright.cli.guide;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Run;
import dev.lapwright.cli.ShownCommands;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The gallery shows every kind of chart with a command that draws it; on request its pictures are drawn again. */
class GalleryTest {
    private static final String PROMPT = "$ ./lapwright ";
    private static final Pattern PICTURE = Pattern.compile("!\\[.+]\\(images/([a-z-]+\\.svg)\\)");
    private static final Pattern FILE = Pattern.compile("`([a-z-]+\\.svg)`: .*");
    private static final Path IMAGES = Path.of("..", "docs", "images");

    private static final List<String> SECONDED = List.of("optimise", "sensitivity", "gearing", "balance");

    @TempDir
    private Path folder;

    /** A picture in the folder of images, and the name of the file that the command writes it to. */
    private record Picture(String command, String image, String file) {}

    private static List<Picture> pictures() throws IOException {
        List<Picture> pictures = new ArrayList<>();
        String command = null;
        String image = null;
        for (String line : ShownCommands.lines("gallery.md")) {
            Matcher picture = PICTURE.matcher(line);
            Matcher file = FILE.matcher(line);
            if (line.startsWith(PROMPT)) {
                command = line.substring(PROMPT.length());
            } else if (picture.matches()) {
                assertThat(image).as("picture without a file").isNull();
                image = picture.group(1);
            } else if (file.matches()) {
                pictures.add(new Picture(command, image, file.group(1)));
                image = null;
            }
        }
        return pictures;
    }

    static Stream<String> commands() throws IOException {
        return pictures().stream().map(Picture::command).distinct();
    }

    /** Every kind of chart laid out for a phone: letters of 11 px or more, none cut off, none upon another. */
    @ParameterizedTest
    @Tag("heavy")
    @MethodSource("commands")
    void everyPictureIsLegibleOnAPhone(String command) throws IOException {
        List<String> arguments = new ArrayList<>(List.of(command.split(" ")));
        Path out = folder.resolve(arguments.get(arguments.indexOf("--out") + 1));
        arguments.addAll(List.of("--picture-width", "360"));
        if (SECONDED.contains(arguments.get(0))) {
            // Nothing of it is drawn.
            arguments.add("--no-second-opinion");
        }
        Run run = Run.in(folder, arguments.toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        try (Stream<Path> files = Files.list(out)) {
            List<Path> pictures =
                    files.filter(file -> file.toString().endsWith(".svg")).toList();
            assertThat(pictures).isNotEmpty();
            for (Path picture : pictures) {
                Lettering lettering = new Lettering(Files.readString(picture));
                assertThat(lettering.width()).isEqualTo(360);
                assertThat(lettering.count()).isPositive();
                assertThat(lettering.faults())
                        .as(picture.getFileName().toString())
                        .isEmpty();
            }
        }
    }

    /** Into the folder it names, and on request from there into that of the images. */
    @ParameterizedTest
    @Tag("heavy")
    @MethodSource("commands")
    void everyCommandDrawsItsPictures(String command) throws IOException {
        List<String> arguments = List.of(command.split(" "));
        String named = arguments.get(arguments.indexOf("--out") + 1);
        assertThat(named).startsWith("mine/");
        Path out = folder.resolve(named);
        Run run = Run.in(folder, command.split(" "));
        assertThat(run.code()).as(run.err()).isZero();
        for (Picture picture : pictures()) {
            if (picture.command().equals(command)) {
                Path drawn = out.resolve(picture.file());
                String svg = Files.readString(drawn);
                assertThat(svg.startsWith("<svg") && svg.endsWith("</svg>"))
                        .as(drawn + " is a picture")
                        .isTrue();
                if (Boolean.getBoolean("lapwright.writePictures")) {
                    Files.copy(drawn, IMAGES.resolve(picture.image()), StandardCopyOption.REPLACE_EXISTING);
                }
            }
        }
    }

    @Test
    void everyPictureIsThere() throws IOException {
        for (Picture picture : pictures()) {
            assertThat(IMAGES.resolve(picture.image())).isNotEmptyFile();
        }
    }

    @Test
    void noPictureIsLeftOver() throws IOException {
        StringBuilder pages = new StringBuilder(Files.readString(Path.of("..", "README.md")));
        for (Path page : ShownCommands.pages()) {
            pages.append(Files.readString(page));
        }
        try (Stream<Path> files = Files.list(IMAGES)) {
            assertThat(files.map(file -> "images/" + file.getFileName() + ")"))
                    .allMatch(link -> pages.indexOf(link) >= 0);
        }
    }

    /** What commands name the pictures that they write to a folder stands in their sources. */
    @Test
    void everyKindOfChartIsShown() throws IOException {
        Pattern named = Pattern.compile("\"([a-z-]+\\.svg)\"");
        Set<String> written = new TreeSet<>();
        try (Stream<Path> sources = Files.walk(Path.of("src", "main", "java"))) {
            for (Path source : sources.filter(Files::isRegularFile).toList()) {
                named.matcher(Files.readString(source)).results().forEach(match -> written.add(match.group(1)));
            }
        }
        assertThat(written).contains("gg.svg");
        List<String> shown = pictures().stream().map(Picture::file).toList();
        // The rear's chart is as the front's, of which one alone has a shorter name; a lap on a line draws the map that
        // 'line' does.
        written.removeAll(Set.of("map-rear.svg", "pass-rear.svg", "pass.svg", "line.svg"));
        assertThat(written).allMatch(name -> shown.stream().anyMatch(file -> file.endsWith(name)));
    }
}
