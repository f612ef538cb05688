using AimTrainer.Domain;

namespace AimTrainer.Calibration;

/// <summary>Reads a file of marks. The format is told in <c>docs/calibration.md</c>.</summary>
public static class MarksFileReader
{
    private const int Format = 1;

    /// <summary>The picture that is meant when a file says none.</summary>
    public static PictureSize UsualPicture { get; } = new(1920, 1080);

    /// <summary>Reads a file of marks, or everything that is wrong with it.</summary>
    /// <param name="fileName">The file as the user named it, for messages.</param>
    /// <param name="utf8">The whole file.</param>
    public static FileRead<MarksFile> Read(string fileName, ReadOnlySpan<byte> utf8)
    {
        var file = JsonFile.Read(fileName, utf8);
        var marks = file.Root is { } root && ObjectReader.Of(file, root) is { } reader ? Marks(reader) : null;
        return new FileRead<MarksFile>(file.HasProblems ? null : marks, file.Problems);
    }

    private static MarksFile Marks(ObjectReader file)
    {
        file.OptionalText("$schema", 500);
        file.OptionalWhole("format", Format, Format);
        var picture = PictureParts.Picture(file.OptionalObject("picture")) ?? UsualPicture;
        var width = Inches.FromInches(
            file.OptionalNumber("laneWidthInches", LaneProfile.NarrowestWidth.Value, LaneProfile.WidestWidth.Value) ?? LaneProfileReader.Default.Width.Value);
        var stretch = PictureParts.Stretch(file.OptionalObject("stretch"));
        var read = (file.Objects("marks", 0, PictureParts.MostMarks, "marks") ?? [])
            .Select(mark => (mark.Place, Mark: PictureParts.Mark(mark, width))).Where(one => one.Mark is not null).ToList();
        file.Done();
        return new MarksFile(picture, width, stretch, read.Select(one => one.Mark!).ToValueList(), read.Select(one => one.Place).ToValueList());
    }
}
