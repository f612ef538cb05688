using System.Reflection;

namespace AimTrainer.Domain.Tests;

/// <summary>Checks that every way of comparing two values gives one answer. The manner is Noda Time's; the code is ours.</summary>
internal static class TestHelper
{
    /// <summary>Equality by method, by object, by hash code and by both operators.</summary>
    /// <param name="value">Any value.</param>
    /// <param name="equal">The same value, made separately.</param>
    /// <param name="different">Values that are not equal to it.</param>
    public static void TestEquals<T>(T value, T equal, params T[] different)
        where T : struct, IEquatable<T>
    {
        Assert.True(value.Equals(equal));
        Assert.True(equal.Equals(value));
        Assert.True(((object)value).Equals(equal));
        Assert.Equal(value.GetHashCode(), equal.GetHashCode());
        Assert.False(((object)value).Equals(null));
        Assert.False(((object)value).Equals("another type"));
        Assert.True(Operator<T>("op_Equality", value, equal));
        Assert.False(Operator<T>("op_Inequality", value, equal));

        foreach (var other in different)
        {
            Assert.False(value.Equals(other));
            Assert.False(other.Equals(value));
            Assert.False(((object)value).Equals(other));
            Assert.False(Operator<T>("op_Equality", value, other));
            Assert.True(Operator<T>("op_Inequality", value, other));
        }
    }

    /// <summary>Order by <see cref="IComparable{T}"/> and by the four operators.</summary>
    /// <param name="value">Any value.</param>
    /// <param name="equal">The same value, made separately.</param>
    /// <param name="greater">Values above it.</param>
    public static void TestComparison<T>(T value, T equal, params T[] greater)
        where T : struct, IComparable<T>
    {
        Ordered(value, equal, 0);
        foreach (var above in greater)
        {
            Ordered(value, above, -1);
            Ordered(above, value, 1);
        }
    }

    private static void Ordered<T>(T left, T right, int sign)
        where T : struct, IComparable<T>
    {
        Assert.Equal(sign, Math.Sign(left.CompareTo(right)));
        Assert.Equal(sign < 0, Operator<T>("op_LessThan", left, right));
        Assert.Equal(sign > 0, Operator<T>("op_GreaterThan", left, right));
        Assert.Equal(sign <= 0, Operator<T>("op_LessThanOrEqual", left, right));
        Assert.Equal(sign >= 0, Operator<T>("op_GreaterThanOrEqual", left, right));
    }

    private static bool Operator<T>(string name, T left, T right)
        where T : struct
    {
        var method = typeof(T).GetMethod(name, BindingFlags.Public | BindingFlags.Static, [typeof(T), typeof(T)]);
        Assert.True(method is not null, $"{typeof(T).Name} has no {name}");
        return (bool)method.Invoke(null, [left, right])!;
    }
}
