namespace AimTrainer.Analysis;

/// <summary>Works out a <see cref="LineAccuracy"/> while shots arrive, keeping none of them. The sums are exact up to a million shots.</summary>
public sealed class LineAccuracyAccumulator
{
    private const int EllipseSteps = 720;

    private string _first = "";
    private string _last = "";
    private int _shots;
    private int _n;
    private int _judged;
    private int _held;
    private decimal _sumX;
    private decimal _sumY;
    private decimal _sumXX;
    private decimal _sumYY;
    private decimal _sumXY;
    private double _sumOfRadii;

    /// <summary>Everything that is told of the shots added so far.</summary>
    public LineAccuracy Result => _n < 2 ? OfFew() : OfSeveral();

    /// <summary>Adds a shot at a line.</summary>
    /// <exception cref="ArgumentException">It was thrown at a single target.</exception>
    public void Add(ObservedShot shot)
    {
        if (shot.Targets.Count < 2)
        {
            throw new ArgumentException("a line has two targets or more", nameof(shot));
        }

        _shots++;
        if (shot.Held is { } held)
        {
            _judged++;
            _held += held ? 1 : 0;
        }

        var (first, last) = (shot.Targets[0], shot.Targets[^1]);
        (_first, _last) = (first.Name, last.Name);
        if (first.Miss is not { } x || last.Miss is not { } y)
        {
            return;
        }

        _n++;
        var (dx, dy) = (x.ExactBoards, y.ExactBoards);
        _sumX += dx;
        _sumY += dy;
        _sumXX += dx * dx;
        _sumYY += dy * dy;
        _sumXY += dx * dy;
        _sumOfRadii += Math.Sqrt((double)((dx * dx) + (dy * dy)));
    }

    private HitRateEstimate HitRate => HitRateEstimate.Of(_held, _judged, _shots == 0 ? "no shot" : "of no shot it is known whether the line was held");

    private LineAccuracy OfFew()
    {
        var none = BoundedEstimate.Unknown("no shot measured at both targets; known from 1 on");
        if (_n == 0)
        {
            return new LineAccuracy(_first, _last, _shots, 0, HitRate, null, none, none, none, null, null, null, null, null, none.Why);
        }

        var only = BoundedEstimate.Bare(_sumOfRadii, EstimateLimits.OneShot);
        return new LineAccuracy(
            _first,
            _last,
            _shots,
            1,
            HitRate,
            Centroid(),
            only,
            only,
            BoundedEstimate.Unknown(EstimateLimits.OneShot),
            _sumOfRadii,
            null,
            null,
            null,
            null,
            EstimateLimits.OneShot);
    }

    private LineAccuracy OfSeveral()
    {
        var centroid = Centroid();
        var scale = (double)_n * (_n - 1);
        var xx = (double)((_n * _sumXX) - (_sumX * _sumX)) / scale;
        var yy = (double)((_n * _sumYY) - (_sumY * _sumY)) / scale;
        var xy = (double)((_n * _sumXY) - (_sumX * _sumY)) / scale;
        var half = Math.Sqrt(((xx - yy) * (xx - yy) / 4) + (xy * xy));
        var (major, minor) = (((xx + yy) / 2) + half, Math.Max(0, ((xx + yy) / 2) - half));
        var angle = Math.Atan2(2 * xy, xx - yy) / 2;
        var meanSquare = (double)(_sumXX + _sumYY) / _n;
        var meanRadius = _sumOfRadii / _n;
        var deviationOfRadii = Math.Sqrt(Math.Max(0, meanSquare - (meanRadius * meanRadius)) * _n / (_n - 1.0));
        var toMotor = Math.Sqrt((_n - 1.0) / _n);
        var freedom = (_n - 1) * (xx + yy) * (xx + yy) / ((major * major) + (minor * minor));
        return new LineAccuracy(
            _first,
            _last,
            _shots,
            _n,
            HitRate,
            centroid,
            CentroidError(centroid, major, minor, angle),
            EstimateLimits.OfMean(meanRadius, major == 0 ? 0 : deviationOfRadii, _n),
            EstimateLimits.OfSpread(Math.Sqrt(xx + yy), _n, freedom: major == 0 ? null : freedom).Times(toMotor),
            Math.Sqrt(meanSquare),
            Math.Sqrt(major),
            Math.Sqrt(minor),
            half == 0 ? null : angle * 180 / Math.PI,
            xx > 0 && yy > 0 ? Math.Clamp(xy / Math.Sqrt(xx * yy), -1, 1) : null,
            half == 0 || xx == 0 || yy == 0 ? "the shots do not scatter at both targets, or alike in every direction" : null);
    }

    private LineCentroid Centroid() => new((double)(_sumX / _n), (double)(_sumY / _n));

    // The confidence ellipse of the centroid by Hotelling's T²: half axes √(λ c), c = 2(n - 1)F / (n(n - 2)). F with two degrees of freedom
    // above has a closed quantile: ν/2 · ((1 - p)^(-2/ν) - 1).
    private BoundedEstimate CentroidError(LineCentroid centroid, double major, double minor, double angle)
    {
        var distance = Math.Sqrt((centroid.First * centroid.First) + (centroid.Last * centroid.Last));
        if (_n < 3 || major == 0)
        {
            return BoundedEstimate.Bare(distance, major == 0 ? EstimateLimits.NoScatter : $"{_n} measured at both targets; limits from 3 on");
        }

        double below = _n - 2;
        var fisher = below / 2 * (Math.Pow(1 - BoundedEstimate.UsualConfidence, -2 / below) - 1);
        var c = 2 * (_n - 1) * fisher / (_n * below);
        var (longHalf, shortHalf) = (Math.Sqrt(major * c), Math.Sqrt(minor * c));

        // The centroid in the axes of the ellipse: is the middle of the line, the origin, within?
        var along = (centroid.First * Math.Cos(angle)) + (centroid.Last * Math.Sin(angle));
        var across = (centroid.Last * Math.Cos(angle)) - (centroid.First * Math.Sin(angle));
        var within = minor > 0 && (along * along / (longHalf * longHalf)) + (across * across / (shortHalf * shortHalf)) <= 1;
        var (nearest, farthest) = (distance, distance);
        for (var step = 0; step < EllipseSteps; step++)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * step / EllipseSteps);
            var (u, v) = (along + (longHalf * cos), across + (shortHalf * sin));
            var apart = Math.Sqrt((u * u) + (v * v));
            (nearest, farthest) = (Math.Min(nearest, apart), Math.Max(farthest, apart));
        }

        return BoundedEstimate.Between(distance, within ? 0 : nearest, farthest);
    }
}
