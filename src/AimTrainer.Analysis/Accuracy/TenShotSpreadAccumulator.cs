using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Works out a <see cref="TenShotSpread"/> while misses arrive.</summary>
internal sealed class TenShotSpreadAccumulator
{
    private const int Ten = 10;

    private BoardOffset _lowest;
    private BoardOffset _highest;
    private int _inTen;
    private int _tens;
    private BoardOffset _latest;
    private BoardOffset _smallest;
    private BoardOffset _largest;
    private decimal _sum;

    public void Add(BoardOffset miss)
    {
        _lowest = _inTen == 0 || miss < _lowest ? miss : _lowest;
        _highest = _inTen == 0 || miss > _highest ? miss : _highest;
        if (++_inTen < Ten)
        {
            return;
        }

        _latest = _highest - _lowest;
        _smallest = _tens == 0 || _latest < _smallest ? _latest : _smallest;
        _largest = _tens == 0 || _latest > _largest ? _latest : _largest;
        _sum += _latest.ExactBoards;
        _tens++;
        _inTen = 0;
    }

    public TenShotSpread Result(Feet? distance, LaneProfile lane)
    {
        if (_tens == 0)
        {
            return new TenShotSpread(0, null, null, null, null, null, null, [], $"{_inTen} measured; known from {Ten} on");
        }

        var latest = _latest.Boards;
        var atTheArrows = distance is { } away && PublishedSpreadBand.AtTheArrows(away);
        var reference = atTheArrows ? PublishedSpreadBand.Of(latest, distance!.Value, lane) : null;
        return new TenShotSpread(
            _tens,
            latest,
            lane.InchesOf(_latest).Value,
            (double)(_sum / _tens),
            _smallest.Boards,
            _largest.Boards,
            reference,
            atTheArrows ? PublishedSpreadBand.Caveats : [],
            reference is not null ? null
                : atTheArrows ? "wider than every published band"
                : "the published bands are for the arrows (12 to 16 ft)");
    }
}
