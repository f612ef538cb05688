using System.Text;

namespace AimTrainer.Domain.Tests;

public sealed class JsonFileTests
{
    [Fact]
    public void Read_Values_KeepLineColumnAndPath()
    {
        var root = Root("{\n  \"ä b\": [ 1, { \"x\": true } ],\r\n\t\"y\": null\n}");

        var odd = root.Members[0];
        Assert.Equal((2, 3, "$['ä b']"), Place(odd.Place));
        Assert.Equal((2, 12, "$['ä b'][0]"), Place(odd.Value.Items[0].Place));
        Assert.Equal((2, 17, "$['ä b'][1].x"), Place(odd.Value.Items[1].Members[0].Place));
        Assert.Equal((3, 2, "$.y"), Place(root.Members[1].Place));
        Assert.Equal(JsonKind.Null, root.Members[1].Value.Kind);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Read_AnyLineEnd_CountsLinesAlike(string lineEnd)
    {
        var root = Root(string.Join(lineEnd, "{", "", "\"a\":", "1", "}"));

        Assert.Equal((4, 1, "$.a"), Place(root.Members[0].Value.Place));
    }

    [Fact]
    public void Read_ByteOrderMark_IsNoPartOfTheText()
    {
        var file = JsonFile.Read("f", [0xEF, 0xBB, 0xBF, (byte)'1']);

        Assert.Equal((1, 1, "$"), Place(file.Root!.Place));
        Assert.False(file.HasProblems);
    }

    [Theory]
    [InlineData(32, true)]
    [InlineData(33, false)]
    public void Read_Depth_HasALimit(int depth, bool isRead)
    {
        var file = Read(new string('[', depth) + new string(']', depth));

        Assert.Equal(isRead, file.Root is not null);
        Assert.Equal(isRead, !file.HasProblems);
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(1, false)]
    public void Read_Size_HasALimit(int bytesOver, bool isRead)
    {
        var file = Read("1" + new string(' ', JsonFile.MostBytes - 1 + bytesOver));

        Assert.Equal(isRead, file.Root is not null);
        Assert.Equal(isRead ? [] : ["f: found a file of 1048577 bytes; allowed: at most 1048576 bytes"], file.Problems.Select(problem => problem.ToString()));
    }

    [Fact]
    public void Read_NameTwice_TellsBothLinesAndKeepsBoth()
    {
        var file = Read("{\n\"a\": 1,\n\"a\": 2 }");

        Assert.Equal(["f:3: $.a: found key \"a\" a second time (first in line 2); allowed: each key once"], file.Problems.Select(problem => problem.ToString()));
        Assert.Equal(["1", "2"], file.Root!.Members.Select(member => member.Value.Text));
    }

    [Fact]
    public void Report_OutOfOrder_IsToldInTheFilesOrder()
    {
        var file = Read("[1,\n2]");
        file.Report(file.Root!.Items[1].Place, "later", "x");
        file.Report(file.Root.Items[0].Place, "earlier", "x");

        Assert.Equal(["earlier", "later"], file.Problems.Select(problem => problem.Found));
    }

    [Fact]
    public void Report_MoreThanTheMost_CountsTheRest()
    {
        var file = Read("1");
        for (var i = 0; i < JsonFile.MostProblems + 7; i++)
        {
            file.Report(file.Root!.Place, "x", "y");
        }

        Assert.Equal(JsonFile.MostProblems + 1, file.Problems.Count);
        Assert.Equal("7 more problems", file.Problems[^1].Found);
        Assert.Equal(JsonFile.MostProblems + 7, file.ProblemCount);
    }

    [Fact]
    public void Describe_LongOrUnprintableText_IsCutAndSpelledOut()
    {
        Assert.Equal("\"a\\u001bb\"", Root("\"a\\u001bb\"").Describe());
        Assert.Equal("\"" + new string('x', 40) + "…\"", Root("\"" + new string('x', 41) + "\"").Describe());
    }

    private static (int Line, int Column, string Path) Place(JsonPlace place) => (place.Line, place.Column, place.Path);

    private static JsonFile Read(string text) => JsonFile.Read("f", Encoding.UTF8.GetBytes(text));

    private static JsonNode Root(string text)
    {
        var file = Read(text);
        Assert.Empty(file.Problems);
        return file.Root!;
    }
}
