using AimTrainer.Domain;

namespace AimTrainer.Sessions;

/// <summary>A shot's time, and its values mixed into 128 bits: two different shots have the same digest once in some 10^38 pairs.</summary>
/// <param name="UtcTicks">The time.</param>
/// <param name="Low">Half of the bits.</param>
/// <param name="High">The other half, mixed from another seed.</param>
internal readonly record struct ShotDigest(long UtcTicks, ulong Low, ulong High)
{
    public static IComparer<ShotDigest> ByTime { get; } =
        Comparer<ShotDigest>.Create((one, other) => one.UtcTicks.CompareTo(other.UtcTicks));

    /// <summary>The digest of a shot that has a time; its id and source do not count.</summary>
    public static ShotDigest Of(Shot shot)
    {
        var mixed = new Mixer();
        foreach (var crossing in shot.Crossings)
        {
            mixed.Add(crossing.Distance.Value);
            mixed.Add(crossing.Board.Boards);
        }

        mixed.Add(shot.Crossings.Count);
        mixed.Add(shot.Laydown?.Boards);
        mixed.Add(shot.Breakpoint?.Board.Boards);
        mixed.Add(shot.Breakpoint?.Distance?.Value);
        mixed.Add(shot.Entry?.Boards);
        mixed.Add(shot.EntryAngle?.Value);
        mixed.Add(shot.LaunchAngle?.Value);
        mixed.Add(shot.Speed?.Value.Value);
        mixed.Add((int?)shot.Speed?.Place);
        mixed.Add(shot.Revs?.Value);
        mixed.Add(shot.AxisRotation?.Value);
        mixed.Add(shot.AxisTilt?.Value);
        mixed.Add(shot.Pins);
        mixed.Add(shot.Ball);
        mixed.Add(shot.Note);
        return mixed.At(shot.Time!.Value.UtcTicks);
    }

    private struct Mixer
    {
        // Bits that no number in a range has, for what was not measured.
        private const ulong Nothing = ulong.MaxValue;

        private ulong _low;
        private ulong _high;

        public void Add(double? value) => Mix(value is { } known ? BitConverter.DoubleToUInt64Bits(known) : Nothing);

        public void Add(string? text)
        {
            Mix(text is null ? Nothing : (ulong)text.Length);
            foreach (var letter in text ?? "")
            {
                Mix(letter);
            }
        }

        public readonly ShotDigest At(long utcTicks) => new(utcTicks, _low, _high);

        private void Mix(ulong bits)
        {
            _low = SeededRandom.Bits(_low ^ bits, 0);
            _high = SeededRandom.Bits(_high + bits, 1);
        }
    }
}
