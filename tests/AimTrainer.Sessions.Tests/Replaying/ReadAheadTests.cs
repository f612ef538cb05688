namespace AimTrainer.Sessions.Tests;

public class ReadAheadTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(256)]
    [InlineData(10_000)]
    public void Of_ASource_GivesItsItemsInOrder(int count) =>
        Assert.Equal(Enumerable.Range(0, count), ReadAhead.Of(Enumerable.Range(0, count)));

    [Fact]
    public void Of_ASourceThatFails_GivesWhatCameBeforeAndThenThrowsTheSame()
    {
        var taken = new List<int>();

        var thrown = Assert.Throws<IOException>(() =>
        {
            foreach (var item in ReadAhead.Of(FailingAt(300)))
            {
                taken.Add(item);
            }
        });

        Assert.Equal("gone", thrown.Message);
        Assert.Equal(Enumerable.Range(0, 300), taken);
    }

    [Fact]
    public void Of_LeftHalfway_HasLetTheSourceGoWhenItIsDisposed()
    {
        var inUse = true;
        using (var items = ReadAhead.Of(Endless()).GetEnumerator())
        {
            Assert.True(items.MoveNext());
            Assert.True(items.MoveNext());
        }

        Assert.False(inUse);

        IEnumerable<int> Endless()
        {
            try
            {
                for (var i = 0; ; i++)
                {
                    yield return i;
                }
            }
            finally
            {
                inUse = false;
            }
        }
    }

    private static IEnumerable<int> FailingAt(int count)
    {
        for (var i = 0; i < count; i++)
        {
            yield return i;
        }

        throw new IOException("gone");
    }
}
