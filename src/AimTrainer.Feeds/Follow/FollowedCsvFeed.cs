using System.Runtime.CompilerServices;
using AimTrainer.Sessions;

namespace AimTrainer.Feeds;

/// <summary>
/// Follows a shot file that another program keeps appending to. It may not be there yet; a last line that is only half written
/// is waited for; a file that was cut short, or replaced by a new one of the same name, is read from its top.
/// </summary>
/// <remarks>
/// The file is looked at again and again, because notices of changes do not reach every network share, and it is closed between
/// looks, so that the other program may rename or delete it at any time. What was appended after the last look and moved away
/// before the next is therefore not seen. A file counts as replaced when it is shorter than what was read of it, or when the last
/// <see cref="TailLength"/> bytes that were read no longer stand in their place.
/// </remarks>
public sealed class FollowedCsvFeed : IShotFeed
{
    internal const int TailLength = 1024;
    private const int PieceLength = 64 * 1024;
    private const int MostBytesALook = 1024 * 1024;

    private readonly string _path;
    private readonly CsvSettings _settings;
    private readonly FollowSettings _follow;
    private readonly TimeProvider _time;
    private readonly byte[] _piece = new byte[PieceLength];
    private CsvShotParser _parser;
    private GrowingText _text = new();
    private byte[] _tail = [];
    private long _offset;
    private long _passOver;
    private bool _looked;
    private int _idleLooks;
    private string? _lastFailure;

    /// <summary>Makes a feed; nothing is opened yet.</summary>
    /// <param name="path">The file.</param>
    /// <param name="settings">Lane, hand, mapping.</param>
    /// <param name="follow">Where to start and how often to look.</param>
    /// <param name="time">The clock.</param>
    public FollowedCsvFeed(string path, CsvSettings settings, FollowSettings follow, TimeProvider time)
    {
        _path = path;
        _settings = settings;
        _follow = follow;
        _time = time;
        _parser = new CsvShotParser(path, settings);
    }

    /// <inheritdoc/>
    public string Name => _path;

    /// <inheritdoc/>
    public async IAsyncEnumerable<FeedItem> ReadAsync([EnumeratorCancellation] CancellationToken cancellationToken)
    {
        var items = new List<FeedItem>();
        while (true)
        {
            var more = Poll(items);
            foreach (var item in items)
            {
                cancellationToken.ThrowIfCancellationRequested();
                yield return item;
            }

            items.Clear();
            cancellationToken.ThrowIfCancellationRequested();
            if (!more)
            {
                await Task.Delay(_follow.Interval, _time, cancellationToken).ConfigureAwait(false);
            }
        }
    }

    /// <summary>Looks once.</summary>
    /// <param name="items">Gets what is new.</param>
    /// <returns>Whether there is more to read at once.</returns>
    internal bool Poll(List<FeedItem> items)
    {
        try
        {
            using var stream = new FileStream(_path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 1);
            var more = Poll(stream, items);
            _lastFailure = null;
            return more;
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            // Not there yet, or between deleted and made anew.
            StartOver();
            _looked = true;
            _lastFailure = null;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            // Often only for a moment, while the other program holds it: said once, and tried again.
            if (_lastFailure != exception.Message)
            {
                _lastFailure = exception.Message;
                items.Add(new FeedItem.Unreadable(CsvText.Failed(_path, exception)));
            }
        }

        return false;
    }

    private bool Poll(FileStream stream, List<FeedItem> items)
    {
        var length = stream.Length;
        if (length < _offset || !TailIsThere(stream))
        {
            StartOver();
            length = stream.Length;
        }

        if (!_looked)
        {
            _looked = true;
            _passOver = _follow.FromEnd ? length : 0;
        }

        stream.Position = _offset;
        var until = Math.Min(length, _offset + MostBytesALook);
        var read = false;
        while (_offset < until)
        {
            // Rows that end within what is passed over must not be mixed with those after it.
            var stop = _offset < _passOver ? Math.Min(until, _passOver) : until;
            var count = stream.Read(_piece, 0, (int)Math.Min(_piece.Length, stop - _offset));
            if (count == 0)
            {
                break;
            }

            read = true;
            _offset += count;
            KeepTail(_piece.AsSpan(0, count));
            Take(_piece.AsSpan(0, count), items);
        }

        _idleLooks = read ? 0 : _idleLooks + 1;
        if (_idleLooks >= _follow.LooksBeforeQuoteIsGivenUp && _parser.Rows.WaitsInQuotes)
        {
            _parser.GiveUpQuotes();
            Drain(items);
        }

        return _offset < length && read;
    }

    private void Take(ReadOnlySpan<byte> bytes, List<FeedItem> items)
    {
        while (bytes.Length > 0 && !_parser.GaveUp)
        {
            // A piece gives at most one character a byte, and one more for what was waiting.
            var free = _parser.Rows.Free();
            var count = Math.Min(bytes.Length, free.Length - 8);
            _parser.Rows.Added(_text.Decode(bytes[..count], free));
            bytes = bytes[count..];
            Drain(items);
        }
    }

    private void Drain(List<FeedItem> items)
    {
        while (_parser.Next(final: false) is { } item)
        {
            // What is wrong with the headings matters to the rows that are still to come.
            if (_offset > _passOver || (item is FeedItem.Unreadable && _parser.GaveUp))
            {
                items.Add(item);
            }
        }
    }

    private bool TailIsThere(FileStream stream)
    {
        if (_tail.Length == 0)
        {
            return true;
        }

        var there = new byte[_tail.Length];
        stream.Position = _offset - _tail.Length;
        return stream.ReadAtLeast(there, there.Length, throwOnEndOfStream: false) == there.Length && there.AsSpan().SequenceEqual(_tail);
    }

    private void KeepTail(ReadOnlySpan<byte> piece)
    {
        var fromBefore = Math.Max(0, Math.Min(_tail.Length, TailLength - piece.Length));
        _tail = [.. _tail.AsSpan(_tail.Length - fromBefore), .. piece[Math.Max(0, piece.Length - TailLength)..]];
    }

    private void StartOver()
    {
        _parser = new CsvShotParser(_path, _settings);
        _text = new GrowingText();
        _tail = [];
        _offset = 0;
        _passOver = 0;
        _idleLooks = 0;
    }
}
