using System.Text;

namespace AimTrainer.Domain;

/// <summary>Counts lines and columns on a way through UTF-8 text that never goes back, so that the whole way is walked once.</summary>
internal ref struct TextCursor(ReadOnlySpan<byte> text)
{
    private readonly ReadOnlySpan<byte> _text = text;

    /// <summary>The last place asked for, in bytes.</summary>
    public int Offset { get; private set; }

    /// <summary>Line of the last place asked for, from 1. A line ends with LF, with CR LF or with a lone CR.</summary>
    public int Line { get; private set; } = 1;

    /// <summary>Its column in characters, from 1.</summary>
    public int Column { get; private set; } = 1;

    /// <summary>Goes on to a place.</summary>
    public void MoveTo(int offset)
    {
        var passed = _text[Offset..offset];
        while (passed.IndexOfAny((byte)'\n', (byte)'\r') is var end and >= 0)
        {
            // The LF of a CR LF ends the line; its CR is only passed.
            var next = Offset + end + 1;
            if (passed[end] == (byte)'\n' || next >= _text.Length || _text[next] != (byte)'\n')
            {
                Line++;
                Column = 1;
            }

            Offset = next;
            passed = passed[(end + 1)..];
        }

        Column += Encoding.UTF8.GetCharCount(passed);
        Offset = offset;
    }
}
