namespace AimTrainer.Domain;

/// <summary>Reads a lane profile from JSON. The format is told in <c>docs/lanes.md</c>.</summary>
public static class LaneProfileReader
{
    private const int Format = 1;
    private const string DefaultName = "default-lane.json";

    /// <summary>The lane that is used when nobody gives another: see <c>docs/lanes.md</c> for where its marks come from.</summary>
    public static LaneProfile Default { get; } = ReadDefault();

    /// <summary>Reads a lane profile, or everything that is wrong with it.</summary>
    /// <param name="fileName">The file as the user named it, for messages.</param>
    /// <param name="utf8">The whole file, with or without a byte order mark.</param>
    public static FileRead<LaneProfile> Read(string fileName, ReadOnlySpan<byte> utf8)
    {
        var file = JsonFile.Read(fileName, utf8);
        var profile = file.Root is { } root && ObjectReader.Of(file, root) is { } reader ? Profile(reader) : null;
        return new FileRead<LaneProfile>(file.HasProblems ? null : profile, file.Problems);
    }

    private static LaneProfile? Profile(ObjectReader lane)
    {
        lane.OptionalText("$schema", 500);
        lane.Whole("format", Format, Format);
        var name = lane.Text("name", 80);
        var width = lane.Number("widthInches", LaneProfile.NarrowestWidth.Value, LaneProfile.WidestWidth.Value);
        var arrows = lane.OptionalNumber("arrowsFeet", 12, 16) ?? 15;
        var straight = lane.OptionalNumber("straightFeet", 5, 40) ?? 20;
        var markers = (lane.Objects("markers", 0, 200, "markers") ?? []).Select(Marker).OfType<LaneMarker>().ToValueList();
        lane.Done();
        return name is null || width is not { } inches
            ? null
            : new LaneProfile
            {
                Name = name,
                Width = Inches.FromInches(inches),
                ArrowsDistance = Feet.FromFeet(arrows),
                StraightDistance = Feet.FromFeet(straight),
                Markers = markers,
            };
    }

    private static LaneMarker? Marker(ObjectReader marker)
    {
        var kind = marker.Choice<MarkerKind>("kind");
        var board = marker.Number("boardFromRight", Board.NearEdge.Boards, Board.FarEdge.Boards);
        var feet = marker.Number("feet", 0, LaneProfile.HeadPin.Value);
        marker.Done();
        return kind is { } sort && board is { } boards && feet is { } distance
            ? new LaneMarker(sort, Board.FromBoards(boards), Feet.FromFeet(distance))
            : null;
    }

    private static LaneProfile ReadDefault()
    {
        using var stream = typeof(LaneProfileReader).Assembly.GetManifestResourceStream(DefaultName)
            ?? throw new InvalidOperationException($"the program was built without {DefaultName}");
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        var read = Read(DefaultName, bytes.ToArray());
        return read.Value ?? throw new InvalidOperationException(string.Join('\n', read.Problems));
    }
}
