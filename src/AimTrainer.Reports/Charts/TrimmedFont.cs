using System.Buffers.Binary;

namespace AimTrainer.Reports;

/// <summary>
/// A TrueType font with the outlines of some glyphs only. Numbers of glyphs, widths and the table of letters stay as they are: what is drawn with
/// the glyphs that are left looks the same, and a document that has the font in it is far smaller. Made in memory for embedding; no font file is
/// written.
/// </summary>
/// <remarks>Source: OpenType specification 1.9 (ISO/IEC 14496-22), tables head, loca and glyf.</remarks>
internal static class TrimmedFont
{
    private const int DirectoryHead = 12, DirectoryEntry = 16;

    // What else a font may hold is for layout and editing: this program draws glyph by glyph.
    private static readonly string[] Kept = ["OS/2", "cmap", "cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "prep"];

    /// <summary>The trimmed font.</summary>
    /// <param name="font">A TrueType font.</param>
    /// <param name="glyphs">The glyphs whose outlines stay; those that they are made of stay as well.</param>
    /// <exception cref="ArgumentException">It is no TrueType font with outlines.</exception>
    public static byte[] Of(ReadOnlySpan<byte> font, IEnumerable<int> glyphs)
    {
        var tables = Tables(font);
        if (!tables.TryGetValue("glyf", out var outlines) || !tables.TryGetValue("loca", out var places) || !tables.TryGetValue("head", out var head))
        {
            throw new ArgumentException("found no outlines; allowed: a TrueType font", nameof(font));
        }

        var longPlaces = BinaryPrimitives.ReadInt16BigEndian(head.AsSpan(50)) != 0;
        var count = (places.Length / (longPlaces ? 4 : 2)) - 1;
        var wanted = WithParts(glyphs, outlines, glyph => (Place(glyph), Place(glyph + 1)));
        var (kept, starts) = (new MemoryStream(), new byte[(count + 1) * 4]);
        for (var glyph = 0; glyph < count; glyph++)
        {
            BinaryPrimitives.WriteUInt32BigEndian(starts.AsSpan(glyph * 4), (uint)kept.Length);
            if (wanted.Contains(glyph))
            {
                kept.Write(outlines, Place(glyph), Place(glyph + 1) - Place(glyph));
                Fill(kept);
            }
        }

        BinaryPrimitives.WriteUInt32BigEndian(starts.AsSpan(count * 4), (uint)kept.Length);
        BinaryPrimitives.WriteInt16BigEndian(head.AsSpan(50), 1);
        (tables["glyf"], tables["loca"]) = (kept.ToArray(), starts);
        return Written(font[..4], [.. Kept.Where(tables.ContainsKey).Select(name => (name, tables[name]))]);

        int Place(int glyph) => longPlaces
            ? (int)BinaryPrimitives.ReadUInt32BigEndian(places.AsSpan(glyph * 4))
            : 2 * BinaryPrimitives.ReadUInt16BigEndian(places.AsSpan(glyph * 2));
    }

    private static Dictionary<string, byte[]> Tables(ReadOnlySpan<byte> font)
    {
        var tables = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        for (var i = 0; i < BinaryPrimitives.ReadUInt16BigEndian(font[4..]); i++)
        {
            var entry = font.Slice(DirectoryHead + (i * DirectoryEntry), DirectoryEntry);
            var (offset, length) = ((int)BinaryPrimitives.ReadUInt32BigEndian(entry[8..]), (int)BinaryPrimitives.ReadUInt32BigEndian(entry[12..]));
            tables[System.Text.Encoding.ASCII.GetString(entry[..4])] = font.Slice(offset, length).ToArray();
        }

        return tables;
    }

    /// <summary>The glyphs and those that they are made of: an accented letter is a letter and an accent.</summary>
    private static HashSet<int> WithParts(IEnumerable<int> glyphs, byte[] outlines, Func<int, (int Start, int End)> placeOf)
    {
        const int PartsAreWords = 0x1, HasScale = 0x8, MoreParts = 0x20, HasTwoScales = 0x40, HasMatrix = 0x80;
        var wanted = new HashSet<int>();
        var open = new Stack<int>(glyphs.Prepend(0));
        while (open.TryPop(out var glyph))
        {
            var (start, end) = placeOf(glyph);
            if (!wanted.Add(glyph) || end - start < 10 || BinaryPrimitives.ReadInt16BigEndian(outlines.AsSpan(start)) >= 0)
            {
                continue;
            }

            for (int at = start + 10, flags = MoreParts; (flags & MoreParts) != 0;)
            {
                flags = BinaryPrimitives.ReadUInt16BigEndian(outlines.AsSpan(at));
                open.Push(BinaryPrimitives.ReadUInt16BigEndian(outlines.AsSpan(at + 2)));
                at += 4 + ((flags & PartsAreWords) != 0 ? 4 : 2) + ((flags & HasScale) != 0 ? 2 : (flags & HasTwoScales) != 0 ? 4 : (flags & HasMatrix) != 0 ? 8 : 0);
            }
        }

        return wanted;
    }

    private static byte[] Written(ReadOnlySpan<byte> version, List<(string Name, byte[] Bytes)> tables)
    {
        using var font = new MemoryStream();
        font.Write(version);
        var powerOfTwo = (int)Math.Pow(2, Math.Floor(Math.Log2(tables.Count)));
        Short(tables.Count);
        Short(powerOfTwo * DirectoryEntry);
        Short((int)Math.Log2(powerOfTwo));
        Short((tables.Count - powerOfTwo) * DirectoryEntry);
        var offset = DirectoryHead + (tables.Count * DirectoryEntry);
        foreach (var (name, bytes) in tables)
        {
            font.Write(System.Text.Encoding.ASCII.GetBytes(name));
            Long(Sum(bytes));
            Long((uint)offset);
            Long((uint)bytes.Length);
            offset += (bytes.Length + 3) / 4 * 4;
        }

        foreach (var (_, bytes) in tables)
        {
            font.Write(bytes);
            Fill(font);
        }

        return font.ToArray();

        void Short(int value)
        {
            Span<byte> two = stackalloc byte[2];
            BinaryPrimitives.WriteUInt16BigEndian(two, (ushort)value);
            font.Write(two);
        }

        void Long(uint value)
        {
            Span<byte> four = stackalloc byte[4];
            BinaryPrimitives.WriteUInt32BigEndian(four, value);
            font.Write(four);
        }
    }

    private static uint Sum(byte[] bytes)
    {
        var sum = 0u;
        for (var i = 0; i < bytes.Length; i++)
        {
            sum += (uint)bytes[i] << (8 * (3 - (i % 4)));
        }

        return sum;
    }

    private static void Fill(MemoryStream stream)
    {
        while (stream.Length % 4 != 0)
        {
            stream.WriteByte(0);
        }
    }
}
