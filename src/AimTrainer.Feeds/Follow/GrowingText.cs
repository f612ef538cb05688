using System.Text;

namespace AimTrainer.Feeds;

/// <summary>Turns bytes that arrive in pieces into characters: UTF-8, or UTF-16 by its byte order mark.</summary>
internal sealed class GrowingText
{
    private readonly List<byte> _head = [];
    private Decoder? _decoder;

    /// <summary>Decodes some bytes; of a character that is not complete the rest is waited for.</summary>
    /// <returns>How many characters were written; at most one more than there are bytes.</returns>
    public int Decode(ReadOnlySpan<byte> bytes, Span<char> characters)
    {
        if (_decoder is not null)
        {
            return _decoder.GetChars(bytes, characters, flush: false);
        }

        // The first three bytes tell the encoding; fewer may be there yet.
        _head.AddRange(bytes);
        var head = _head.ToArray();
        var (encoding, mark) = head switch
        {
            [0xEF, 0xBB, 0xBF, ..] => (Encoding.UTF8, 3),
            [0xFF, 0xFE, ..] => (Encoding.Unicode, 2),
            [0xFE, 0xFF, ..] => (Encoding.BigEndianUnicode, 2),
            [] or [0xEF] or [0xEF, 0xBB] or [0xFF] or [0xFE] => (null, 0),
            _ => (Encoding.UTF8, 0),
        };
        if (encoding is null)
        {
            return 0;
        }

        _decoder = encoding.GetDecoder();
        return _decoder.GetChars(head.AsSpan(mark), characters, flush: false);
    }
}
