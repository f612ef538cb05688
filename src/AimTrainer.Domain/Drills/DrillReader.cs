using System.Buffers;

namespace AimTrainer.Domain;

/// <summary>Reads a drill from JSON. The format is told in <c>docs/drills.md</c> and <c>drills/drill.schema.json</c>.</summary>
public static class DrillReader
{
    private const int Format = 1;

    private static readonly SearchValues<char> IdLetters = SearchValues.Create("abcdefghijklmnopqrstuvwxyz0123456789-");

    /// <summary>Reads a drill, or everything that is wrong with it.</summary>
    /// <param name="fileName">The file as the user named it, for messages.</param>
    /// <param name="utf8">The whole file, with or without a byte order mark.</param>
    public static FileRead<DrillScript> Read(string fileName, ReadOnlySpan<byte> utf8)
    {
        var file = JsonFile.Read(fileName, utf8);
        var drill = file.Root is { } root && ObjectReader.Of(file, root) is { } reader ? Drill(file, reader) : null;
        return new FileRead<DrillScript>(file.HasProblems ? null : drill, file.Problems);
    }

    private static DrillScript? Drill(JsonFile file, ObjectReader drill)
    {
        drill.OptionalText("$schema", 500);
        drill.Whole("format", Format, Format);
        var id = drill.Text("id", 60);
        if (id is not null && id.AsSpan().ContainsAnyExcept(IdLetters))
        {
            drill.Report("id", FoundText.Quoted(id), "lower-case letters a to z, digits and hyphens");
        }

        var name = drill.Text("name", 80);
        var purpose = drill.Text("purpose", 500);
        var whoFor = drill.Text("whoFor", 300);
        var minutes = drill.Whole("aboutMinutes", 1, 240);
        var cautions = drill.OptionalTexts("cautions", 10, 500);
        var asks = drill.OptionalFlag("asksHowArmFeels") ?? false;
        var blocks = Blocks(file, drill);
        drill.Done();
        if (id is null || name is null || purpose is null || whoFor is null || minutes is null)
        {
            return null;
        }

        return new DrillScript
        {
            Id = id,
            Name = name,
            Purpose = purpose,
            WhoFor = whoFor,
            AboutMinutes = (int)minutes,
            Cautions = cautions,
            AsksHowArmFeels = asks,
            Blocks = blocks,
        };
    }

    private static ValueList<DrillBlock> Blocks(JsonFile file, ObjectReader drill)
    {
        var names = new NameSet("block", "drill");
        var blocks = new List<DrillBlock>();
        foreach (var reader in drill.Objects("blocks", 1, 50, "blocks") ?? [])
        {
            names.Take(reader);
            if (BlockReader.Read(file, reader) is { } block)
            {
                blocks.Add(block);
            }
        }

        return blocks.ToValueList();
    }
}
