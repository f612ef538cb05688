using System.Text;

namespace AimTrainer.Domain.Tests;

public sealed class ObjectReaderTests
{
    [Fact]
    public void Done_UnknownKey_NamesTheMostAlikeFirst()
    {
        var (file, reader) = Reader("""{ "widthBoard": 3, "colour": "red" }""");
        reader.OptionalNumber("board", 0, 40);
        reader.OptionalNumber("widthBoards", 0, 20);
        reader.Done();

        Assert.Equal(
            ["found unknown key \"widthBoard\"; allowed: widthBoards (the most alike), board", "found unknown key \"colour\"; allowed: board, widthBoards"],
            file.Problems.Select(problem => $"found {problem.Found}; allowed: {problem.Allowed}"));
    }

    [Theory]
    [InlineData("3", 3L)]
    [InlineData("3.0", 3L)]
    [InlineData("3e0", 3L)]
    [InlineData("3.5", null)]
    [InlineData("6", null)]
    [InlineData("1e400", null)]
    [InlineData("\"3\"", null)]
    public void Whole_Value_IsReadOnlyWhenWholeAndInRange(string json, long? expected)
    {
        var (file, reader) = Reader($$"""{ "n": {{json}} }""");

        Assert.Equal(expected, reader.Whole("n", 1, 5));
        Assert.Equal(expected is null, file.HasProblems);
    }

    [Theory]
    [InlineData("1", 1.0)]
    [InlineData("5", 5.0)]
    [InlineData("0.9999999999", null)]
    [InlineData("5.0000000001", null)]
    [InlineData("true", null)]
    public void Number_Range_IsInclusive(string json, double? expected)
    {
        var (file, reader) = Reader($$"""{ "n": {{json}} }""");

        Assert.Equal(expected, reader.Number("n", 1, 5));
        Assert.Equal(expected is null, file.HasProblems);
    }

    [Theory]
    [InlineData("release", SpeedPlace.Release)]
    [InlineData("pins", SpeedPlace.Pins)]
    [InlineData("Pins", null)]
    [InlineData("unknown", null)]
    [InlineData("1", null)]
    public void Choice_Name_IsReadAsWritten(string word, SpeedPlace? expected)
    {
        var (file, reader) = Reader($$"""{ "at": "{{word}}" }""");

        Assert.Equal(expected, reader.Choice("at", SpeedPlace.Unknown));
        Assert.Equal(expected is null, file.HasProblems);
    }

    [Fact]
    public void Optional_Missing_IsNoProblem()
    {
        var (file, reader) = Reader("{}");

        Assert.Null(reader.OptionalNumber("n", 1, 5));
        Assert.Null(reader.OptionalText("t", 5));
        Assert.Null(reader.OptionalFlag("f"));
        Assert.Null(reader.OptionalObject("o"));
        Assert.Empty(reader.OptionalTexts("l", 5, 5));
        Assert.False(file.HasProblems);
    }

    [Theory]
    [InlineData("[[1, 2], [3, 4], [5, 6]]", "")]
    [InlineData("[[1, 2], [3, 4]]", "$.m: a list of 2")]
    [InlineData("[[1, 2], [3, 4, 5], [5, 6]]", "$.m[1]: a list of 3")]
    [InlineData("[[1, 2], [3, 10], [5, 6]]", "$.m[1][1]: 10")]
    [InlineData("[1, 2, 3]", "$.m[0]: 1")]
    public void Rows_ListOfLists_NumbersOrWhatIsWrong(string json, string problem)
    {
        var (file, reader) = Reader($$"""{ "m": {{json}} }""");

        Assert.Equal(problem.Length == 0 ? [1, 2, 3, 4, 5, 6] : null, reader.Rows("m", 3, 2, 0, 9));
        Assert.Equal(problem, file.Problems.Count == 0 ? "" : $"{file.Problems[0].Path}: {file.Problems[0].Found}");
    }

    [Fact]
    public void ExactlyOne_NoneOneOrMore_IsToldUnlessOne()
    {
        var (none, empty) = Reader("{}");
        var (one, single) = Reader("""{ "b": 1 }""");
        var (more, both) = Reader("""{ "b": 1, "a": 2 }""");

        Assert.Null(empty.ExactlyOne("a", "b"));
        Assert.Equal("b", single.ExactlyOne("a", "b"));
        Assert.Equal("b", both.ExactlyOne("a", "b"));
        Assert.Equal(["none of a, b"], none.Problems.Select(problem => problem.Found));
        Assert.Empty(one.Problems);
        Assert.Equal(["\"a\" beside \"b\""], more.Problems.Select(problem => problem.Found));
    }

    private static (JsonFile File, ObjectReader Reader) Reader(string json)
    {
        var file = JsonFile.Read("f", Encoding.UTF8.GetBytes(json));
        return (file, ObjectReader.Of(file, file.Root!)!);
    }
}
