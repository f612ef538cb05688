using AimTrainer.Domain;

namespace AimTrainer.Motion;

/// <summary>What is believed of a lane: its best numbers, and how far they may be off.</summary>
/// <param name="Sheet">The lane's sheet.</param>
/// <param name="Numbers">Today's numbers.</param>
/// <param name="Covariance">Of oil friction, dry friction and pattern end, row by row (nine); null when nobody knows, and then the lane is taken as exact.</param>
public sealed record LaneBelief(LaneSurface Sheet, LaneNumbers Numbers, ValueList<double>? Covariance)
{
    /// <summary>A lane that is taken as its sheet says.</summary>
    public static LaneBelief Exactly(LaneSurface sheet) => new(sheet, LaneNumbers.Of(sheet), null);

    /// <summary>The lane with the best numbers.</summary>
    public LaneSurface Best => Numbers.On(Sheet);

    /// <summary>Lanes that it may be, drawn by chance from the belief and kept within what a lane can have.</summary>
    /// <param name="count">How many, 1 or more; one is enough where nothing is uncertain.</param>
    /// <param name="seed">The seed.</param>
    /// <exception cref="ArgumentException">The covariance is not one.</exception>
    public ValueList<LaneSurface> Draws(int count, ulong seed)
    {
        if (Covariance is null || Covariance.AsEnumerable().All(value => value == 0))
        {
            return [Best];
        }

        var free = Enumerable.Range(0, LaneNumbers.Count).Where(i => Covariance[i * (LaneNumbers.Count + 1)] != 0).ToList();
        var matrix = new double[free.Count, free.Count];
        for (var i = 0; i < free.Count; i++)
        {
            for (var j = 0; j < free.Count; j++)
            {
                matrix[i, j] = Covariance[(free[i] * LaneNumbers.Count) + free[j]];
            }
        }

        var factor = SmallMatrix.Factor(matrix) ?? throw new ArgumentException("a covariance of the lane's numbers that is none");
        return Enumerable.Range(0, count).Select(draw =>
        {
            var numbers = Numbers;
            for (var i = 0; i < free.Count; i++)
            {
                var parameter = (LaneParameter)free[i];
                var value = Numbers[parameter];
                for (var j = 0; j <= i; j++)
                {
                    value += factor[i, j] * ThrowSample.Normal(seed, (ulong)((draw * LaneNumbers.Count) + j));
                }

                var (low, high) = LaneNumbers.Allowed(parameter, Sheet);
                numbers = numbers.With(parameter, Math.Clamp(value, low, high));
            }

            return numbers.On(Sheet);
        }).ToValueList();
    }
}
