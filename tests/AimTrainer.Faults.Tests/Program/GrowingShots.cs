using System.Globalization;
using System.Text;

namespace AimTrainer.Faults.Tests;

/// <summary>
/// A shot file that grows as another program's would: rows of a seeded bowler, appended in pieces, so that the last row is often
/// only half there for a while.
/// </summary>
internal sealed class GrowingShots
{
    private static readonly DateTimeOffset _firstShot = new(2026, 1, 5, 18, 0, 0, TimeSpan.Zero);

    private readonly Random _chance;
    private string _rest;

    public GrowingShots(string file, int seed)
    {
        File = file;
        _chance = new Random(seed);
        _rest = "id,time,boardAt15,boardAt40,speedMph,speedAt,revsRpm,pins\n";
    }

    public string File { get; }

    /// <summary>Rows written, the last one perhaps only half.</summary>
    public int Rows { get; private set; }

    /// <summary>Appends rows until there are this many, and leaves the last one half written.</summary>
    public void GrowTo(int rows)
    {
        if (rows <= Rows)
        {
            return;
        }

        var text = new StringBuilder(_rest);
        while (Rows < rows)
        {
            Rows++;
            text.Append(NextRow());
        }

        var cut = text.Length - _chance.Next(1, 20);
        _rest = text.ToString(cut, text.Length - cut);
        Append(text.ToString(0, cut));
    }

    /// <summary>Writes the rest of the last row.</summary>
    public void Finish()
    {
        Append(_rest);
        _rest = "";
    }

    private void Append(string text)
    {
        using var stream = new FileStream(File, FileMode.Append, FileAccess.Write, FileShare.ReadWrite);
        stream.Write(Encoding.UTF8.GetBytes(text));
    }

    private string NextRow() => string.Create(
        CultureInfo.InvariantCulture,
        $"shot-{Rows},{_firstShot.AddSeconds(Rows * 20L):O},{Around(10, 2):F2},{Around(7, 2.5):F2},{Around(17, 0.4):F1},release,{Around(330, 15):F0},{_chance.Next(4, 11)}\n");

    /// <summary>Near enough to a normal spread for shots: the sum of twelve even draws.</summary>
    private double Around(double centre, double spread)
    {
        var sum = -6.0;
        for (var i = 0; i < 12; i++)
        {
            sum += _chance.NextDouble();
        }

        return centre + (spread * sum);
    }
}
