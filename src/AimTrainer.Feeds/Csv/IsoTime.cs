namespace AimTrainer.Feeds;

/// <summary>
/// Reads a date with a time of day as ISO 8601 writes it: <c>2026-03-01T18:05:09.25+01:00</c>. Seconds, their fraction and the
/// offset may be left out, <c>Z</c> stands for +00:00, a space may stand for the T.
/// </summary>
/// <remarks>By hand, because a million rows are read with it.</remarks>
internal static class IsoTime
{
    /// <summary>Reads one. Without an offset the time is kept as it is written, with offset +00:00.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out DateTimeOffset time)
    {
        time = default;
        var rest = text.Trim();
        if (!Digits(ref rest, 4, out var year) || !Skip(ref rest, '-') || !Digits(ref rest, 2, out var month) || !Skip(ref rest, '-')
            || !Digits(ref rest, 2, out var day) || !(Skip(ref rest, 'T') || Skip(ref rest, 't') || Skip(ref rest, ' '))
            || !Digits(ref rest, 2, out var hour) || !Skip(ref rest, ':') || !Digits(ref rest, 2, out var minute))
        {
            return false;
        }

        var second = 0;
        long ticks = 0;
        if (Skip(ref rest, ':') && (!Digits(ref rest, 2, out second) || !Fraction(ref rest, out ticks)))
        {
            return false;
        }

        if (!Offset(rest, out var offsetMinutes) || year < 1 || month is < 1 or > 12 || day < 1 || day > DateTime.DaysInMonth(year, month)
            || hour > 23 || minute > 59 || second > 59)
        {
            return false;
        }

        var local = new DateTime(year, month, day, hour, minute, second, DateTimeKind.Unspecified).AddTicks(ticks);
        var offset = TimeSpan.FromMinutes(offsetMinutes);
        if (local.Ticks - offset.Ticks < DateTime.MinValue.Ticks || local.Ticks - offset.Ticks > DateTime.MaxValue.Ticks)
        {
            return false;
        }

        time = new DateTimeOffset(local, offset);
        return true;
    }

    private static bool Fraction(ref ReadOnlySpan<char> rest, out long ticks)
    {
        ticks = 0;
        if (!Skip(ref rest, '.') && !Skip(ref rest, ','))
        {
            return true;
        }

        var worth = TimeSpan.TicksPerSecond / 10;
        var count = 0;
        while (rest.Length > 0 && char.IsAsciiDigit(rest[0]))
        {
            ticks += (rest[0] - '0') * worth;
            worth /= 10;
            count++;
            rest = rest[1..];
        }

        return count > 0;
    }

    private static bool Offset(ReadOnlySpan<char> rest, out int minutes)
    {
        minutes = 0;
        if (rest.Length == 0 || (rest.Length == 1 && rest[0] is 'Z' or 'z'))
        {
            return true;
        }

        var sign = rest[0];
        rest = rest[1..];
        if (sign is not ('+' or '-') || !Digits(ref rest, 2, out var hours))
        {
            return false;
        }

        var after = 0;
        if (rest.Length > 0)
        {
            Skip(ref rest, ':');
            if (!Digits(ref rest, 2, out after) || rest.Length > 0)
            {
                return false;
            }
        }

        minutes = ((hours * 60) + after) * (sign == '-' ? -1 : 1);
        return after < 60 && Math.Abs(minutes) <= 14 * 60;
    }

    private static bool Digits(ref ReadOnlySpan<char> rest, int count, out int value)
    {
        value = 0;
        if (rest.Length < count)
        {
            return false;
        }

        foreach (var digit in rest[..count])
        {
            if (!char.IsAsciiDigit(digit))
            {
                return false;
            }

            value = (value * 10) + digit - '0';
        }

        rest = rest[count..];
        return true;
    }

    private static bool Skip(ref ReadOnlySpan<char> rest, char expected)
    {
        if (rest.Length == 0 || rest[0] != expected)
        {
            return false;
        }

        rest = rest[1..];
        return true;
    }
}
