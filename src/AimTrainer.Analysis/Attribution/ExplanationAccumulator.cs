using AimTrainer.Domain;

namespace AimTrainer.Analysis;

/// <summary>Gathers what is needed to explain the misses at one target by speed and revs, keeping no shot.</summary>
internal sealed class ExplanationAccumulator
{
    private const string Speed = "speedMph";
    private const string Revs = "revsRpm";

    private readonly CoMoments[] _bySpeed = Places(3);
    private readonly CoMoments[] _byBoth = Places(4);
    private readonly CoMoments _byRevs = new(3);

    public void Add(Shot shot, double miss, double bent)
    {
        if (shot.Revs is { } revs)
        {
            _byRevs.Add(miss, bent, revs.Value);
        }

        if (shot.Speed is not { } speed)
        {
            return;
        }

        // Speeds from different places are never mixed.
        _bySpeed[(int)speed.Place].Add(miss, bent, speed.Value.Value);
        if (shot.Revs is { } also)
        {
            _byBoth[(int)speed.Place].Add(miss, bent, speed.Value.Value, also.Value);
        }
    }

    public ValueList<Explanation> Result()
    {
        var place = 0;
        for (var i = 1; i < _bySpeed.Length; i++)
        {
            place = _bySpeed[i].Count > _bySpeed[place].Count ? i : place;
        }

        var at = (SpeedPlace)place;
        string[] explains = ["miss", "beyond"];
        return explains.SelectMany((what, response) => new[]
        {
            Explanation.Of(what, _bySpeed[place], response, at, [Speed]),
            Explanation.Of(what, _byRevs, response, null, [Revs]),
            Explanation.Of(what, _byBoth[place], response, at, [Speed, Revs]),
        }).ToValueList();
    }

    private static CoMoments[] Places(int variables) => [.. Enum.GetValues<SpeedPlace>().Select(_ => new CoMoments(variables))];
}
