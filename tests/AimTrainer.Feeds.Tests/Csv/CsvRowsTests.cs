using System.Globalization;
using CsCheck;
using CsvHelper;
using CsvHelper.Configuration;

namespace AimTrainer.Feeds.Tests;

public class CsvRowsTests
{
    private static readonly Gen<string> Cells = Gen.Char["ab\",;\r\n \u00e4"].Array[0, 8].Select(characters => new string(characters));

    private static readonly Gen<string[][]> Tables = Gen.Int[1, 4].SelectMany(width => Cells.Array[width].Array[1, 6]);

    /// <summary>By itself CsvHelper quotes only its own line end, and RFC 4180 asks for CR and LF.</summary>
    private static readonly CsvConfiguration Rfc4180 = new(CultureInfo.InvariantCulture)
    {
        NewLine = "\r\n",
        ShouldQuote = field => field.Field.AsSpan().ContainsAny(",\"\r\n"),
    };

    /// <summary>
    /// CsvHelper is the outside check: what it writes by RFC 4180 is read here to the same cells. At most 20 lines in a cell is our
    /// own limit, which these cells cannot reach.
    /// </summary>
    [Fact]
    public void Next_WhatCsvHelperWrote_ReadsTheSameCells()
    {
        Tables.Sample(table =>
        {
            var written = new StringWriter();
            using (var writer = new CsvWriter(written, Rfc4180))
            {
                foreach (var row in table)
                {
                    foreach (var cell in row)
                    {
                        writer.WriteField(cell);
                    }

                    writer.NextRecord();
                }
            }

            var text = written.ToString();
            Assert.Equal(table, Cut(text, [text.Length]));
        });
    }

    [Fact]
    public void Next_AnyPieces_GivesTheSameRowsAndLines()
    {
        Gen.Select(Gen.Char["a\",\r\n"].Array[0, 40], Gen.Int[0, 40], Gen.Int[0, 40]).Sample((characters, first, second) =>
        {
            var text = new string(characters);
            var whole = Said(text, [text.Length]);
            var (low, high) = (Math.Min(Math.Min(first, second), text.Length), Math.Min(Math.Max(first, second), text.Length));
            Assert.Equal(whole, Said(text, [low, high, text.Length]));
            Assert.Equal(whole, Said(text, [.. Enumerable.Range(1, text.Length)]));
        });
    }

    private static List<string[]> Cut(string text, int[] ends)
    {
        var rows = new CsvRows(',');
        var found = new List<string[]>();
        Feed(rows, text, ends, status =>
        {
            Assert.Equal(CsvRowStatus.Row, status);
            found.Add([.. Enumerable.Range(0, rows.Count).Select(i => rows.Cell(i).ToString())]);
        });
        return found;
    }

    private static List<string> Said(string text, int[] ends)
    {
        var rows = new CsvRows(',');
        var found = new List<string>();
        Feed(rows, text, ends, status => found.Add(
            $"{rows.Line} {status} " + (status == CsvRowStatus.Row ? string.Join('|', Enumerable.Range(0, rows.Count).Select(i => rows.Cell(i).ToString())) : "")));
        return found;
    }

    private static void Feed(CsvRows rows, string text, int[] ends, Action<CsvRowStatus> take)
    {
        var from = 0;
        foreach (var end in ends)
        {
            text.AsSpan(from, end - from).CopyTo(rows.Free());
            rows.Added(end - from);
            from = end;
            while (rows.Next(false) is not CsvRowStatus.NeedMore and var status)
            {
                take(status);
            }
        }

        while (rows.Next(true) is not CsvRowStatus.End and var status)
        {
            take(status);
        }
    }
}
