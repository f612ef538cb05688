using System.Text;

namespace AimTrainer.Domain.Tests;

/// <summary>Bad drills whose bytes no editor or version control should touch, made in code.</summary>
internal static class MadeDrills
{
    /// <summary>A good drill in a few bytes.</summary>
    public const string Good =
        """
        {
          "format": 1,
          "id": "good",
          "name": "Good",
          "purpose": "Shows a drill.",
          "whoFor": "Tests.",
          "aboutMinutes": 10,
          "blocks": [
            {
              "name": "one",
              "kind": "training",
              "aims": [{ "name": "ten", "board": 10, "feet": 15, "widthBoards": 3 }],
              "order": { "kind": "serial" },
              "until": { "shots": 10 }
            }
          ]
        }
        """;

    private static readonly string Bad = Good.Replace("\"board\": 10", "\"board\": 99", StringComparison.Ordinal);

    public static IEnumerable<(string Name, byte[] Bytes)> All()
    {
        yield return ("made: no bytes", []);
        yield return ("made: byte order mark only", [0xEF, 0xBB, 0xBF]);
        yield return ("made: byte order mark, line counted from 1", [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Bad)]);
        yield return ("made: CR LF", Encoding.UTF8.GetBytes(Bad.Replace("\n", "\r\n", StringComparison.Ordinal)));
        yield return ("made: CR alone", Encoding.UTF8.GetBytes(Bad.Replace('\n', '\r')));
        yield return ("made: UTF-16 little-endian with mark", [.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes(Good)]);
        yield return ("made: UTF-16 big-endian with mark", [.. Encoding.BigEndianUnicode.Preamble, .. Encoding.BigEndianUnicode.GetBytes(Good)]);
        yield return ("made: UTF-16 little-endian without mark", Encoding.Unicode.GetBytes(Good));
        yield return ("made: UTF-16 big-endian without mark", Encoding.BigEndianUnicode.GetBytes(Good));
        yield return ("made: UTF-32 with mark", [.. Encoding.UTF32.Preamble, .. Encoding.UTF32.GetBytes(Good)]);
        yield return ("made: UTF-32 without mark", Encoding.UTF32.GetBytes(Good));
        yield return ("made: one byte per letter", Encoding.Latin1.GetBytes(Good.Replace("Good", "G\u00FCt", StringComparison.Ordinal)));
        yield return ("made: picture", [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 0x0D, 0x49, 0x48, 0x44, 0x52]);
        yield return ("made: nested 33 deep", Encoding.UTF8.GetBytes(new string('[', 33) + new string(']', 33)));
        yield return ("made: nested a million deep", Encoding.UTF8.GetBytes(new string('[', 1_000_000)));
        yield return ("made: line of 10 MB", Encoding.UTF8.GetBytes($"{{ \"name\": \"{new string('x', 10 << 20)}\" }}"));
        yield return ("made: name of 1 MB less a little", Encoding.UTF8.GetBytes(Good.Replace("Good", new string('x', 1_000_000), StringComparison.Ordinal)));
        yield return ("made: key of 1 MB less a little", Encoding.UTF8.GetBytes(Good.Replace("\"name\": \"Good\"", $"\"{new string('n', 1_000_000)}\": \"Good\"", StringComparison.Ordinal)));
        yield return ("made: 600 unknown keys", Encoding.UTF8.GetBytes(Good.Replace("\"format\": 1,", "\"format\": 1, " + string.Concat(Enumerable.Range(0, 600).Select(i => $"\"k\": {i}, ")), StringComparison.Ordinal)));
        yield return ("made: 400000 values", Encoding.UTF8.GetBytes(Good.Replace("[{", "[" + string.Concat(Enumerable.Repeat("1,", 400_000)) + "{", StringComparison.Ordinal)));
        yield return ("made: line break in a text", Encoding.UTF8.GetBytes(Good.Replace("Shows a", "Shows\na", StringComparison.Ordinal)));
        yield return ("made: zero byte in a text", Encoding.UTF8.GetBytes(Good.Replace("Shows a", "Shows\0a", StringComparison.Ordinal)));
        yield return ("made: tab in a text", Encoding.UTF8.GetBytes(Good.Replace("Shows a", "Shows\ta", StringComparison.Ordinal)));
        yield return ("made: text turned round", Encoding.UTF8.GetBytes(Good.Replace("Shows a", "Shows \u202Ea", StringComparison.Ordinal)));
    }
}
